import type { Site } from "../../records/sites.ts";

/** A way to reach a household, as a link where the words can be one. */
export interface Contact {
  readonly key: "telephone" | "email" | "place";
  readonly says: string;
  readonly link: string | null;
}

/** Source  tel: RFC 3966, mailto: RFC 6068, geo: RFC 5870 (from memory). */
export function contactsOf({ telephone, email, latitude, longitude }: Site): readonly Contact[] {
  return [
    ...(telephone === null ? [] : [{ key: "telephone", says: telephone, link: telephoneLink(telephone) } as const]),
    ...(email === null ? [] : [{ key: "email", says: email, link: emailLink(email) } as const]),
    ...(latitude === null || longitude === null
      ? []
      : [{ key: "place", says: `${latitude}, ${longitude}`, link: `geo:${latitude},${longitude}` } as const]),
  ];
}

/** Digits with what people write between them, and nothing else. An extension is dialled by hand. */
function telephoneLink(words: string): string | null {
  const [, number = ""] = /^\s*(\+?[\d\s().\-/]{5,})(?:\s*(?:x|ext\.?)\s*\d+)?\s*$/i.exec(words) ?? [];
  const digits = number.replace(/[^\d+]/g, "");
  return digits.length < 5 ? null : `tel:${digits}`;
}

function emailLink(words: string): string | null {
  const address = words.trim();
  return /^[^\s@<>"',;:?&#%/\\]+@[^\s@<>"',;:?&#%/\\]+\.[^\s@<>"',;:?&#%/\\.]+$/.test(address) ? `mailto:${address}` : null;
}
