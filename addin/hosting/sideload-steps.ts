export interface Sideloading {
  /** Where the add-in is served, such as https://localhost:3500/. */
  readonly address: string;
  /** Whole paths on this machine. */
  readonly manifest: string;
  readonly folder: string;
  /** Whether this machine trusts the certificate that the address is served with. */
  readonly isTrusted: boolean;
}

/** What a person does to see the add-in in Excel, exactly, for the platform of this machine; Excel on the web is the same on all. */
export function sideloadSteps(platform: NodeJS.Platform, { address, manifest, folder, isTrusted }: Sideloading): readonly string[] {
  const web = [
    "Excel on the web",
    `1. Open ${address}taskpane.html in the same browser once. ${isTrusted ? "It must show a page of Soakbook and no warning." : "Accept its warning about the certificate; then it shows a page of Soakbook."}`,
    "2. Open a workbook at the address where you use Excel on the web.",
    "3. Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in.",
    `4. Choose ${manifest} and press Upload.`,
  ];
  const last = ["Then type =SOAK.DRAWDOWN(6,0.5) in a cell: it answers 12. Keep this window open; Ctrl+C stops serving."];
  if (platform !== "darwin" && platform !== "win32")
    return ["There is no Excel for this system; Excel on the web takes the add-in.", "", ...web, "", ...last];
  if (!isTrusted)
    return [
      `Excel on ${platform === "win32" ? "Windows" : "Mac"} takes no add-in from here before the certificate is trusted; Excel on the web does.`,
      "",
      ...web,
      "",
      ...last,
    ];
  if (platform === "darwin") {
    const container = "~/Library/Containers/com.microsoft.Excel/Data/Documents/wef";
    return [
      "Excel on Mac",
      `1. In Terminal: mkdir -p ${container}`,
      `2. In Terminal: cp "${manifest}" ${container}/soakbook.xml`,
      "3. Quit Excel and open it again, with a workbook.",
      "4. Home, Add-ins: choose Soakbook under Developer Add-ins.",
      `To take it away: rm ${container}/soakbook.xml`,
      "",
      ...web,
      "",
      ...last,
    ];
  }
  return [
    "Excel on Windows",
    `1. Right-click ${folder} in the File Explorer, Properties, Sharing, Share: with yourself. Note the network path it gives.`,
    "2. In Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs.",
    "3. Paste the network path as Catalog Url, Add Catalog, tick Show in Menu, OK. Close Excel and open it again.",
    "4. Home, Add-ins, More Add-ins, Shared Folder: choose Soakbook, Add.",
    "To take it away: remove the catalog where you added it.",
    "",
    ...web,
    "",
    ...last,
  ];
}

/** What to do when this machine could not be made to trust its own certificate. */
export function withoutTrust(reason: string): readonly string[] {
  return [
    "This machine does not trust its certificate for localhost yet:",
    `  ${reason}`,
    "Run the command again as somebody who may install a certificate for this user, or: npx office-addin-dev-certs install",
    "Without that, host dist/ at an https address of your own (npm run build -- --origin https://...), or go on in a browser that you tell to accept it.",
    "The page without Excel needs none of this: npm start.",
  ];
}
