import { useEffect, useState } from "preact/hooks";

/**
 * Says a result to a screen reader once typing has paused: a live region over the result itself would speak at
 * every keystroke. Not seen on the screen, where the result already stands.
 */
export function LiveSentence({ says }: { readonly says: string }) {
  const [said, say] = useState("");
  useEffect(() => {
    const timer = setTimeout(() => say(says), TYPING_PAUSE_MILLISECONDS);
    return () => clearTimeout(timer);
  }, [says]);
  return (
    <p role="status" class="unseen">
      {said}
    </p>
  );
}

const TYPING_PAUSE_MILLISECONDS = 1000;
