/**
 * Says in the pane why it does not start: the window is too old for it, a part did not load, or nothing has come for a long time.
 * The page loads this first, as a script of its own without anything later than ES5, because an old window stops at the first
 * word that it does not know. Once the pane has started there is nothing left that it could change.
 */
const STARTING = "starting";
const LONG_MILLISECONDS = 30_000;
const TOO_OLD =
  "Soakbook cannot run in this window: it is too old for it. Update Excel, or open the workbook in Excel on the web. Nothing in the workbook was changed.";
const PART_MISSING = "A part of Soakbook did not load. Check the connection, then close this pane and open it again.";
const SLOW = "Soakbook has not started for half a minute. Check the connection, then close this pane and open it again.";

function say(sentence: string): void {
  const starting = document.getElementById(STARTING);
  if (starting !== null) starting.textContent = sentence;
  else if (document.readyState === "loading")
    document.addEventListener("DOMContentLoaded", function () {
      say(sentence);
    });
}

window.addEventListener(
  "error",
  function (event) {
    if (event instanceof ErrorEvent) {
      if (/SyntaxError/.test(event.message)) say(TOO_OLD);
    } else say(PART_MISSING);
  },
  true,
);
// A window that does not know modules passes them over without a word.
if (!("noModule" in document.createElement("script"))) say(TOO_OLD);
setTimeout(function () {
  say(SLOW);
}, LONG_MILLISECONDS);
