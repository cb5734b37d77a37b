import { useEffect, useState } from "preact/hooks";

/**
 * What takes too long for the moment of a keystroke: worked out when the drawing stands on the screen, once for the last of
 * several changes. Until then it is what it was.
 */
export function useWorkedOutLater<Value>(workOut: () => Value, basis: readonly unknown[]): Value {
  const [value, setValue] = useState(workOut);
  const [worked, setWorked] = useState(basis);
  const isCurrent = worked.length === basis.length && worked.every((each, place) => Object.is(each, basis[place]));
  useEffect(() => {
    if (isCurrent) return undefined;
    const timer = setTimeout(() => {
      setValue(workOut);
      setWorked(basis);
    }, AFTER_TYPING_MILLISECONDS);
    return () => clearTimeout(timer);
  }, basis);
  return value;
}

const AFTER_TYPING_MILLISECONDS = 80;
