/** Hands a file over to the person, the way a browser saves one. */
export function saveFile(fileName: string, content: string | Uint8Array, mediaType: string): void {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type: mediaType }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  // Some web views follow only a link that stands in the page.
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after the click is handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
