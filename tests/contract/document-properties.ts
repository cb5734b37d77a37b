/** Properties of the document that a file brings with it, as Excel answers for them. */
import type { HostObject } from "./host-object.ts";
import type { Spreadsheet } from "./spreadsheet.ts";

export function propertiesObject(book: Spreadsheet): HostObject {
  const property = (key: string): HostObject => ({
    type: "CustomProperty",
    id: key,
    properties: { Key: { get: () => key }, Value: { get: () => book.customProperties.get(key) } },
  });
  const custom: HostObject = {
    type: "CustomPropertyCollection",
    properties: {},
    items: () => [...book.customProperties.keys()].map(property),
    methods: { GetItemOrNullObject: (key: string) => (book.customProperties.has(key) ? property(key) : null) },
  };
  return { type: "DocumentProperties", properties: { Custom: { get: () => custom } }, methods: {} };
}
