/** Pixels of the picture for each of the drawing's: sharp when it is printed from the workbook. */
const SHARPNESS = 2;

/** A drawing of the page as a PNG in base64, in the looks it has there. */
export async function svgPicture(drawn: SVGSVGElement, width: number, height: number): Promise<string> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(standingAlone(drawn))}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * SHARPNESS;
  canvas.height = height * SHARPNESS;
  const paper = canvas.getContext("2d");
  if (paper === null) throw new Error("This page cannot draw a picture.");
  paper.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^data:image\/png;base64,/, "");
}

/** What the style sheets say of a drawing: alone, as a picture, it has none of them. */
const LOOKS = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "paint-order",
  "opacity",
  "color",
  "font-family",
  "font-size",
  "font-weight",
] as const;

/** A copy of the drawing that carries its looks in itself. */
function standingAlone(drawn: SVGSVGElement): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  const copies = [copy, ...copy.querySelectorAll<SVGElement>("*")];
  [drawn, ...drawn.querySelectorAll<SVGElement>("*")].forEach((element, place) => {
    const looks = getComputedStyle(element);
    const own = copies[place];
    for (const look of LOOKS) {
      // A pattern is named by its place in this drawing, which the copy keeps.
      if (own?.style.getPropertyValue(look).startsWith("url(") === false) own.style.setProperty(look, looks.getPropertyValue(look));
    }
  });
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  return new XMLSerializer().serializeToString(copy);
}
