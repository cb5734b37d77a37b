import type { HTMLAttributes } from "preact";

type FluentElement<Own = object> = HTMLAttributes<HTMLElement> & Own;

/** The Fluent elements that fluent.ts defines, as JSX may write them. */
declare module "preact" {
  namespace JSX {
    interface IntrinsicElements {
      "fluent-button": FluentElement<{ appearance?: string; type?: string }>;
      "fluent-message-bar": FluentElement<{ intent?: string; layout?: string }>;
      "fluent-spinner": FluentElement<{ size?: string }>;
      "fluent-tab": FluentElement;
      "fluent-tablist": FluentElement<{ activeid?: string }>;
    }
  }
}
