import { AppManifestUtils, type TeamsManifest } from "@microsoft/app-manifest";
import { describe, expect, test } from "vitest";
import { addinDescription, COMMAND_IDS } from "../../manifest/addin-description.ts";
import { jsonManifest } from "../../manifest/json-manifest.ts";
import { xmlManifest } from "../../manifest/xml-manifest.ts";

const origin = "https://garden.example";

const manifest = jsonManifest(addinDescription, origin);

const runtimeActions = () => manifest.extensions[0]!.runtimes[0]!.actions;
const controlsOfRibbon = () => manifest.extensions[0]!.ribbons[0]!.tabs[0]!.groups[0]!.controls;
const commandNamed = (id: string) => addinDescription.commands.find((command) => command.id === id)!;

/** Microsoft's validator with the schema it ships; no network. */
const faults = (changed: object) => AppManifestUtils.validateAgainstSchema(changed as TeamsManifest);

describe("the unified manifest", () => {
  test("is valid by schema 1.30", async () => {
    expect(await faults(manifest)).toEqual([]);
  });

  test("is refused by that schema when something it needs is missing or misspelt", async () => {
    const { accentColor: _, ...withoutColor } = manifest;
    expect(await faults(withoutColor)).not.toEqual([]);
    expect(await faults({ ...manifest, extensions: [{ ...manifest.extensions[0], runtime: [] }] })).not.toEqual([]);
  });

  test("leads to functions.json and the functions script of its version, as the XML manifest does", () => {
    const [runtime, ...others] = manifest.extensions[0]!.runtimes;
    const version = addinDescription.version;
    expect(others).toEqual([]);
    expect(runtime).toMatchObject({
      lifetime: "long",
      code: { page: `${origin}/taskpane.html`, script: `${origin}/functions.js?v=${version}` },
      customFunctions: { namespace: { id: "SOAK", name: "SOAK" }, metadataUrl: `${origin}/functions.json?v=${version}` },
    });
    const xml = xmlManifest(addinDescription, origin);
    for (const address of [runtime!.customFunctions.metadataUrl, runtime!.code.script]) expect(xml).toContain(`DefaultValue="${address}"`);
  });

  // The options of functions.json that the schema has no word for inside a manifest.
  test("could not let errors into the functions if it listed them itself", async () => {
    const [extension] = manifest.extensions;
    const listing = { ...extension!.runtimes[0]!.customFunctions, allowErrorForDataTypeAny: true };
    expect(
      await faults({ ...manifest, extensions: [{ ...extension, runtimes: [{ ...extension!.runtimes[0], customFunctions: listing }] }] }),
    ).not.toEqual([]);
  });

  test("hides the add-in of the XML manifest where both are installed, and bears another name", () => {
    expect(manifest.extensions[0]!.alternates).toEqual([{ hide: { customOfficeAddin: { officeAddinId: addinDescription.xmlId } } }]);
    expect(xmlManifest(addinDescription, origin)).toContain(`<Id>${addinDescription.xmlId}</Id>`);
    expect(manifest.name.short).not.toBe(addinDescription.name);
  });

  test("opens the pane by an action its runtime knows", () => {
    const button = controlsOfRibbon()[0]!;
    expect(runtimeActions()).toContainEqual({ id: button.actionId, type: "openPage", displayName: "Open the pane", view: "Soakbook.Pane" });
    expect(button.label).toBe("Open the pane");
  });

  test("offers every command once: four buttons, a menu of three, and the working in the menu of a cell", () => {
    const ribbon = controlsOfRibbon();
    const cellMenu = manifest.extensions[0]!.contextMenus[0]!.menus[0]!;
    const offered = [
      ...ribbon.slice(1).flatMap((control) => ("items" in control ? control.items.map(({ actionId }) => actionId) : [control.actionId])),
      ...cellMenu.controls[0]!.items.map(({ actionId }) => actionId),
    ];
    expect(offered).toEqual([...COMMAND_IDS]);
    expect(ribbon.map(({ type }) => type)).toEqual(["button", "button", "button", "button", "button", "menu"]);
    expect(cellMenu.entryPoint).toBe("cell");
    for (const id of COMMAND_IDS)
      expect(runtimeActions()).toContainEqual({ id, type: "executeFunction", displayName: commandNamed(id).label });
  });

  test("says the same of each command as the XML manifest", () => {
    const xml = xmlManifest(addinDescription, origin);
    for (const { label, tip } of addinDescription.commands)
      for (const words of [label, tip]) expect(xml).toContain(`DefaultValue="${words}"`);
  });

  test("demands the same requirement sets as the XML manifest", () => {
    const xml = xmlManifest(addinDescription, origin);
    const capabilities = manifest.extensions[0]!.requirements.capabilities;
    expect(capabilities.length).toBe(3);
    for (const { name, minVersion } of capabilities) expect(xml).toContain(`<Set Name="${name}" MinVersion="${minVersion}"/>`);
  });

  test("gives every address over https from where the add-in is hosted", () => {
    const { $schema: _, ...ours } = manifest;
    const addresses = JSON.stringify(ours).match(/[a-z]+:\/\/[^"]+/g) ?? [];
    expect(addresses.length).toBeGreaterThan(8);
    for (const address of addresses) expect(address.startsWith(`${origin}/`)).toBe(true);
    expect(manifest.validDomains).toEqual(["garden.example"]);
  });
});
