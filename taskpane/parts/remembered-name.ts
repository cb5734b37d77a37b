import { useState } from "preact/hooks";

/** Who is at work, kept on this device so that nobody types a name twice a day. Storage may be blocked. */
export function useRememberedName(): readonly [name: string, remember: (name: string) => void] {
  const [name, setName] = useState(rememberedName);
  return [
    name,
    (typed) => {
      setName(typed);
      try {
        localStorage.setItem(NAME_KEY, typed);
      } catch {
        return;
      }
    },
  ];
}

/** Who was at work last on this device, or "". */
export function rememberedName(): string {
  try {
    return localStorage.getItem(NAME_KEY) ?? "";
  } catch {
    return "";
  }
}

const NAME_KEY = "soakbook.name";
