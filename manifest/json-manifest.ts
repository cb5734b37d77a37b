import { addressAt, type AddinDescription } from "./addin-description.ts";

/** A worksheet function as Excel lists it; functions.json holds the same list. */
export interface ListedFunction {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl?: string;
  readonly parameters: readonly ListedParameter[];
  readonly result: { readonly dimensionality?: string };
}

export interface ListedParameter {
  readonly name: string;
  readonly description?: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
}

/**
 * The unified manifest (schema 1.30), for Excel of Microsoft 365. Its packaged form is a zip of this file and
 * the two icons it names by path.
 *
 * The functions stand inside it, because this schema has no place for the options of functions.json. So an
 * error value in an argument may turn a whole spilled answer into that error here, and does not with manifest.xml.
 */
export function jsonManifest(addin: AddinDescription, origin: string, functions: readonly ListedFunction[]) {
  const at = (file: string) => addressAt(origin, file);
  const icons = addin.icons.ribbon.map(({ pixels, file }) => ({ size: pixels, url: at(file) }));
  const openPane = "openPane";
  const supertip = (title: string, description: string) => ({ title, description });
  const commandsAt = (place: AddinDescription["commands"][number]["place"]) => addin.commands.filter((command) => command.place === place);
  const control = ({ id, label, tip }: AddinDescription["commands"][number]) => ({
    id: `Soakbook.${id}`,
    label,
    icons,
    supertip: supertip(label, tip),
    actionId: id,
  });
  const asItem = (command: AddinDescription["commands"][number]) => ({ ...control(command), type: "menuItem" });
  return {
    $schema: "https://developer.microsoft.com/json-schemas/teams/v1.30/MicrosoftTeams.schema.json",
    manifestVersion: "1.30",
    version: addin.version,
    id: addin.jsonId,
    name: { short: addin.name, full: addin.name },
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
        runtimes: [
          {
            id: "SoakbookRuntime",
            type: "general",
            lifetime: "long",
            code: { page: at(addin.files.page) },
            actions: [
              { id: openPane, type: "openPage", displayName: addin.ribbon.button, view: "Soakbook.Pane" },
              ...addin.commands.map(({ id, label }) => ({ id, type: "executeFunction", displayName: label })),
            ],
            customFunctions: {
              namespace: { id: addin.namespace, name: addin.namespace },
              functions: functions.map(listed),
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

function listed({ id, name, description, helpUrl, parameters, result }: ListedFunction) {
  return {
    id,
    name,
    description,
    ...(helpUrl === undefined ? {} : { helpUrl }),
    parameters: parameters.map((parameter) => ({
      name: parameter.name,
      ...(parameter.description === undefined ? {} : { description: parameter.description }),
      type: parameter.type ?? "any",
      dimensionality: parameter.dimensionality ?? "scalar",
      ...(parameter.optional === true ? { optional: true } : {}),
    })),
    result: { dimensionality: result.dimensionality ?? "scalar" },
  };
}
