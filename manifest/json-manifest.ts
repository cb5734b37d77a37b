import { addressAt, iconFile, RIBBON_PIXELS, type AddinDescription, type CommandId } from "./addin-description.ts";

/**
 * The unified manifest (schema 1.30), for Excel of Microsoft 365. Its packaged form is a zip of this file and
 * the two icons it names by path.
 *
 * It leads to functions.json as the other manifest does (learn.microsoft.com, "Convert custom functions to the unified
 * manifest"), because functions that stand inside it have no word for letting errors in. It hides the add-in of the other
 * manifest where both are installed, and bears a name of its own, as the same pages ask ("Manage both a unified manifest and
 * an add-in only manifest version").
 */
export function jsonManifest(addin: AddinDescription, origin: string) {
  const at = (file: string) => addressAt(origin, file);
  const iconsOf = (name: CommandId | "icon") => RIBBON_PIXELS.map((pixels) => ({ size: pixels, url: at(iconFile(addin, name, pixels)) }));
  const icons = iconsOf("icon");
  const openPane = "openPane";
  const supertip = (title: string, description: string) => ({ title, description });
  const commandsAt = (place: AddinDescription["commands"][number]["place"]) => addin.commands.filter((command) => command.place === place);
  const control = ({ id, label, tip }: AddinDescription["commands"][number]) => ({
    id: `Soakbook.${id}`,
    label,
    icons: iconsOf(id),
    supertip: supertip(label, tip),
    actionId: id,
  });
  const asItem = (command: AddinDescription["commands"][number]) => ({ ...control(command), type: "menuItem" });
  return {
    $schema: "https://developer.microsoft.com/json-schemas/teams/v1.30/MicrosoftTeams.schema.json",
    manifestVersion: "1.30",
    version: addin.version,
    id: addin.jsonId,
    name: { short: addin.jsonName, full: addin.jsonName },
    description: { short: addin.summary, full: addin.description },
    developer: {
      name: addin.provider,
      websiteUrl: at(addin.files.support),
      privacyUrl: at(addin.files.privacy),
      termsOfUseUrl: at(addin.files.terms),
    },
    icons: { color: addin.icons.color, outline: addin.icons.outline },
    accentColor: addin.accentColor,
    validDomains: [new URL(at("")).host],
    authorization: { permissions: { resourceSpecific: [{ name: "Document.ReadWrite.User", type: "Delegated" }] } },
    extensions: [
      {
        requirements: {
          scopes: ["workbook"],
          capabilities: addin.requirementSets.map((set) => ({ name: set.name, minVersion: set.minimumVersion })),
        },
        alternates: [{ hide: { customOfficeAddin: { officeAddinId: addin.xmlId } } }],
        keyboardShortcuts: [
          {
            requirements: { capabilities: [{ name: "SharedRuntime", minVersion: "1.1" }] },
            shortcuts: addin.commands.flatMap(({ id, keys }) => (keys === undefined ? [] : [{ key: { default: keys }, actionId: id }])),
          },
        ],
        runtimes: [
          {
            id: "SoakbookRuntime",
            type: "general",
            lifetime: "long",
            code: { page: at(addin.files.page), script: at(addin.files.functions) },
            actions: [
              { id: openPane, type: "openPage", displayName: addin.ribbon.button, view: "Soakbook.Pane" },
              ...addin.commands.map(({ id, label }) => ({ id, type: "executeFunction", displayName: label })),
            ],
            customFunctions: {
              namespace: { id: addin.namespace, name: addin.namespace },
              metadataUrl: at(addin.files.functionsMetadata),
            },
          },
        ],
        ribbons: [
          {
            contexts: ["default"],
            tabs: [
              {
                builtInTabId: "TabHome",
                groups: [
                  {
                    id: "Soakbook.Group",
                    label: addin.ribbon.group,
                    icons,
                    controls: [
                      {
                        id: "Soakbook.OpenPane",
                        type: "button",
                        label: addin.ribbon.button,
                        icons,
                        supertip: supertip(addin.ribbon.button, addin.ribbon.buttonTip),
                        actionId: openPane,
                      },
                      ...commandsAt("ribbon").map((command) => ({ ...control(command), type: "button" })),
                      {
                        id: "Soakbook.More",
                        type: "menu",
                        label: addin.ribbon.more,
                        icons,
                        supertip: supertip(addin.ribbon.more, addin.ribbon.moreTip),
                        items: commandsAt("more").map(asItem),
                      },
                    ],
                  },
                ],
              },
            ],
          },
        ],
        contextMenus: [
          {
            menus: [
              {
                entryPoint: "cell",
                // This schema takes a menu here, and no button.
                controls: [
                  {
                    id: "Soakbook.Cell",
                    type: "menu",
                    label: addin.ribbon.group,
                    icons,
                    supertip: supertip(addin.ribbon.group, addin.summary),
                    items: commandsAt("cell menu").map(asItem),
                  },
                ],
              },
            ],
          },
        ],
      },
    ],
  };
}
