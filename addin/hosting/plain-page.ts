import { html, type Html } from "./html.ts";

/** A page of words beside the add-in: no script, nothing from another host. */
export function plainPage(title: string, body: Html): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>${title}</title>
<link rel="icon" href="icons/icon-32.png">
<link rel="stylesheet" href="help.css">
</head>
<body>
${body}
</body>
</html>
`.text;
}
