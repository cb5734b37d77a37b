import { addressAt, COMMAND_IDS, iconFile, RIBBON_PIXELS, type AddinDescription, type CommandId } from "./addin-description.ts";
import { element, textElement, xmlDocument, type XmlElement } from "./xml-element.ts";

/**
 * The add-in only manifest, which every Excel that runs custom functions reads.
 *
 * Excel checks the order of the elements, so they are written in the order of its schema. Runtime, page,
 * function file and pane all name the resource "page": were they different, Excel would start two runtimes
 * and the pane could not see the functions.
 */
export function xmlManifest(addin: AddinDescription, origin: string): string {
  const at = (file: string) => addressAt(origin, file);
  const resources = resourcesOf(addin, at);
  return xmlDocument(
    element(
      "OfficeApp",
      {
        xmlns: "http://schemas.microsoft.com/office/appforoffice/1.1",
        "xmlns:xsi": "http://www.w3.org/2001/XMLSchema-instance",
        "xmlns:bt": "http://schemas.microsoft.com/office/officeappbasictypes/1.0",
        "xmlns:ov": "http://schemas.microsoft.com/office/taskpaneappversionoverrides",
        "xsi:type": "TaskPaneApp",
      },
      textElement("Id", addin.xmlId),
      textElement("Version", `${addin.version}.0`),
      textElement("ProviderName", addin.provider),
      textElement("DefaultLocale", "en-US"),
      withDefault("DisplayName", addin.name),
      withDefault("Description", addin.description),
      withDefault("IconUrl", at(iconFile(addin, "icon", 32))),
      withDefault("HighResolutionIconUrl", at(iconFile(addin, "icon", 64))),
      withDefault("SupportUrl", at(addin.files.support)),
      element("AppDomains", {}, textElement("AppDomain", new URL(at("")).origin)),
      element("Hosts", {}, element("Host", { Name: "Workbook" })),
      element(
        "Requirements",
        {},
        element(
          "Sets",
          { DefaultMinVersion: "1.1" },
          ...addin.requirementSets.map((set) => element("Set", { Name: set.name, MinVersion: set.minimumVersion })),
        ),
      ),
      element("DefaultSettings", {}, withDefault("SourceLocation", at(addin.files.page))),
      textElement("Permissions", "ReadWriteDocument"),
      element(
        "VersionOverrides",
        { xmlns: "http://schemas.microsoft.com/office/taskpaneappversionoverrides", "xsi:type": "VersionOverridesV1_0" },
        element("Hosts", {}, host(addin)),
        element(
          "Resources",
          {},
          resourceList("bt:Images", "bt:Image", resources.images),
          resourceList("bt:Urls", "bt:Url", resources.urls),
          resourceList("bt:ShortStrings", "bt:String", resources.shortStrings),
          resourceList("bt:LongStrings", "bt:String", resources.longStrings),
        ),
      ),
      element("ExtendedOverrides", { Url: at(addin.files.shortcuts) }),
    ),
  );
}

function host(addin: AddinDescription): XmlElement {
  return element(
    "Host",
    { "xsi:type": "Workbook" },
    element("Runtimes", {}, element("Runtime", { resid: "page", lifetime: "long" })),
    element(
      "AllFormFactors",
      {},
      element(
        "ExtensionPoint",
        { "xsi:type": "CustomFunctions" },
        element("Script", {}, element("SourceLocation", { resid: "functions" })),
        element("Page", {}, element("SourceLocation", { resid: "page" })),
        element("Metadata", {}, element("SourceLocation", { resid: "functions-metadata" })),
        element("Namespace", { resid: "namespace" }),
      ),
    ),
    element(
      "DesktopFormFactor",
      {},
      element(
        "GetStarted",
        {},
        element("Title", { resid: "name" }),
        element("Description", { resid: "summary" }),
        element("LearnMoreUrl", { resid: "help" }),
      ),
      element("FunctionFile", { resid: "page" }),
      element(
        "ExtensionPoint",
        { "xsi:type": "PrimaryCommandSurface" },
        element(
          "OfficeTab",
          { id: "TabHome" },
          element(
            "Group",
            { id: "Soakbook.Group" },
            element("Label", { resid: "group" }),
            icon(),
            paneButton(),
            ...commandsAt(addin, "ribbon").map(commandButton),
            moreMenu(addin),
          ),
        ),
      ),
      element(
        "ExtensionPoint",
        { "xsi:type": "ContextMenu" },
        element("OfficeMenu", { id: "ContextMenuCell" }, ...commandsAt(addin, "cell menu").map(commandButton)),
      ),
    ),
  );
}

function paneButton(): XmlElement {
  return element(
    "Control",
    { "xsi:type": "Button", id: "Soakbook.OpenPane" },
    ...labelled("button"),
    icon(),
    element(
      "Action",
      { "xsi:type": "ShowTaskpane" },
      textElement("TaskpaneId", "Soakbook.Pane"),
      element("SourceLocation", { resid: "page" }),
    ),
  );
}

type Command = AddinDescription["commands"][number];

function commandsAt({ commands }: AddinDescription, place: Command["place"]): readonly Command[] {
  return commands.filter((command) => command.place === place);
}

function commandButton({ id }: Command): XmlElement {
  return element("Control", { "xsi:type": "Button", id: `Soakbook.${id}` }, ...labelled(resourceOf(id)), icon(id), runs(id));
}

function moreMenu(addin: AddinDescription): XmlElement {
  const items = commandsAt(addin, "more").map(({ id }) =>
    element("Item", { id: `Soakbook.${id}` }, ...labelled(resourceOf(id)), icon(id), runs(id)),
  );
  return element("Control", { "xsi:type": "Menu", id: "Soakbook.More" }, ...labelled("more"), icon(), element("Items", {}, ...items));
}

/** The addresses have resources of their own, one of them "help". */
function resourceOf(id: Command["id"]): string {
  return `command-${id}`;
}

function labelled(resource: string): readonly XmlElement[] {
  return [
    element("Label", { resid: resource }),
    element("Supertip", {}, element("Title", { resid: resource }), element("Description", { resid: `${resource}-tip` })),
  ];
}

function runs(id: Command["id"]): XmlElement {
  return element("Action", { "xsi:type": "ExecuteFunction" }, textElement("FunctionName", id));
}

/** The picture of a command; without one, that of the add-in. */
function icon(name: CommandId | "icon" = "icon"): XmlElement {
  return element("Icon", {}, ...RIBBON_PIXELS.map((pixels) => element("bt:Image", { size: String(pixels), resid: `${name}-${pixels}` })));
}

type Resources = ReadonlyMap<string, string>;

function resourcesOf(
  addin: AddinDescription,
  at: (file: string) => string,
): Record<"images" | "urls" | "shortStrings" | "longStrings", Resources> {
  return {
    images: new Map(
      (["icon", ...COMMAND_IDS] as const).flatMap((name) =>
        RIBBON_PIXELS.map((pixels) => [`${name}-${pixels}`, at(iconFile(addin, name, pixels))] as const),
      ),
    ),
    urls: new Map([
      ["page", at(addin.files.page)],
      ["functions", at(addin.files.functions)],
      ["functions-metadata", at(addin.files.functionsMetadata)],
      ["help", at(addin.files.help)],
    ]),
    shortStrings: new Map([
      ["name", addin.name],
      ["namespace", addin.namespace],
      ["group", addin.ribbon.group],
      ["button", addin.ribbon.button],
      ["more", addin.ribbon.more],
      ...addin.commands.map(({ id, label }) => [resourceOf(id), label] as const),
    ]),
    longStrings: new Map([
      ["summary", addin.summary],
      ["button-tip", addin.ribbon.buttonTip],
      ["more-tip", addin.ribbon.moreTip],
      ...addin.commands.map(({ id, tip }) => [`${resourceOf(id)}-tip`, tip] as const),
    ]),
  };
}

function resourceList(list: string, item: string, resources: Resources): XmlElement {
  return element(list, {}, ...[...resources].map(([id, value]) => element(item, { id, DefaultValue: value })));
}

function withDefault(name: string, value: string): XmlElement {
  return element(name, { DefaultValue: value });
}
