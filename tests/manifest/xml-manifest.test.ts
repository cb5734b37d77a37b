import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { OfficeAddinManifest } from "office-addin-manifest";
import { afterAll, describe, expect, test } from "vitest";
import { addinDescription, COMMAND_IDS, type AddinDescription } from "../../manifest/addin-description.ts";
import { jsonManifest } from "../../manifest/json-manifest.ts";
import { shortcuts } from "../../manifest/shortcuts.ts";
import { xmlManifest } from "../../manifest/xml-manifest.ts";

const origin = "https://garden.example";
const xml = xmlManifest(addinDescription, origin);

const folder = mkdtempSync(join(tmpdir(), "soakbook-manifest-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** Microsoft's own manifest reader, offline. It rejects XML that is not well formed. */
function readByOffice(text: string) {
  const file = join(folder, "manifest.xml");
  writeFileSync(file, text);
  return OfficeAddinManifest.readManifestFile(file);
}

const attributes = (name: string, text = xml) => [...text.matchAll(new RegExp(`\\s${name}="([^"]*)"`, "g"))].map((match) => match[1]!);

describe("the XML manifest", () => {
  test("is read by Microsoft's manifest reader as the add-in it describes", async () => {
    expect(await readByOffice(xml)).toMatchObject({
      id: addinDescription.xmlId,
      version: `${addinDescription.version}.0`,
      displayName: "Soakbook",
      providerName: addinDescription.provider,
      officeAppType: "TaskPaneApp",
      hosts: ["Workbook"],
      permissions: "ReadWriteDocument",
      iconUrl: `${origin}/icons/icon-32.png`,
      highResolutionIconUrl: `${origin}/icons/icon-64.png`,
      supportUrl: `${origin}/support.html`,
      defaultSettings: { sourceLocation: `${origin}/taskpane.html` },
    });
  });

  test("stays well formed when a text holds the characters of markup", async () => {
    const awkward: AddinDescription = { ...addinDescription, description: 'Rain < 1" & "soil" > sand' };
    expect((await readByOffice(xmlManifest(awkward, origin))).description).toBe('Rain < 1" & "soil" > sand');
  });

  test("is refused by that reader when an element is left open", async () => {
    await expect(readByOffice(xml.replace("</Requirements>", ""))).rejects.toThrow();
  });

  test("has a GUID for its id and four parts in its version", () => {
    expect(xml).toMatch(/<Id>[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}<\/Id>/);
    expect(xml).toMatch(/<Version>\d+\.\d+\.\d+\.\d+<\/Version>/);
  });

  test("keeps the order of elements that Excel's schema asks for", () => {
    const outer = [...xml.matchAll(/^ {2}<([A-Za-z]+)/gm)].map((match) => match[1]);
    expect(outer).toEqual([
      "Id",
      "Version",
      "ProviderName",
      "DefaultLocale",
      "DisplayName",
      "Description",
      "IconUrl",
      "HighResolutionIconUrl",
      "SupportUrl",
      "AppDomains",
      "Hosts",
      "Requirements",
      "DefaultSettings",
      "Permissions",
      "VersionOverrides",
      "ExtendedOverrides",
    ]);
    const parts = [
      "<Runtimes>",
      "<AllFormFactors>",
      "<Script>",
      "<Page>",
      "<Metadata>",
      "<Namespace",
      "<DesktopFormFactor>",
      "<GetStarted>",
      "<FunctionFile",
      "<OfficeTab",
      "<Resources>",
      "<bt:Images>",
      "<bt:Urls>",
      "<bt:ShortStrings>",
      "<bt:LongStrings>",
    ];
    const places = parts.map((part) => xml.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  test("defines every resource once and uses every resource it defines", () => {
    const defined = attributes("id", xml.slice(xml.indexOf("<Resources>")));
    expect(defined.length).toBeGreaterThan(10);
    expect(new Set(defined).size).toBe(defined.length);
    expect([...new Set(attributes("resid"))].sort()).toEqual([...defined].sort());
  });

  test("names no resource with more than the 32 characters Excel allows", () => {
    for (const id of [...attributes("id"), ...attributes("resid")]) expect(id.length).toBeLessThanOrEqual(32);
  });

  test("keeps short texts within 125 characters and long texts within 250", () => {
    const texts = (list: string) => attributes("DefaultValue", xml.slice(xml.indexOf(`<bt:${list}>`), xml.indexOf(`</bt:${list}>`)));
    for (const text of texts("ShortStrings")) expect(text.length).toBeLessThanOrEqual(125);
    for (const text of texts("LongStrings")) expect(text.length).toBeLessThanOrEqual(250);
    expect(texts("LongStrings").length).toBeGreaterThan(0);
  });

  test("gives every address over https from where the add-in is hosted", () => {
    const addresses = attributes("DefaultValue").filter((value) => value.includes("://"));
    expect(addresses.length).toBeGreaterThan(8);
    for (const address of addresses) expect(address.startsWith(`${origin}/`)).toBe(true);
  });

  test("can be hosted in a folder of a site", () => {
    const hosted = xmlManifest(addinDescription, "https://garden.example/soak");
    expect(hosted).toContain('DefaultValue="https://garden.example/soak/taskpane.html"');
    expect(hosted).toContain("<AppDomain>https://garden.example</AppDomain>");
  });

  test("refuses a hosting address that is not https", () => {
    expect(() => xmlManifest(addinDescription, "http://garden.example")).toThrow('"http://garden.example" is not an https address');
  });

  test("names one resource for runtime, functions' page, function file and pane, so that all run together", () => {
    const resid = (pattern: RegExp) => pattern.exec(xml)?.[1];
    const page = resid(/<Runtime resid="([^"]+)" lifetime="long"\/>/);
    expect(page).toBe("page");
    expect(resid(/<Page>\s*<SourceLocation resid="([^"]+)"/)).toBe(page);
    expect(resid(/<FunctionFile resid="([^"]+)"/)).toBe(page);
    expect(resid(/<TaskpaneId>[^<]+<\/TaskpaneId>\s*<SourceLocation resid="([^"]+)"/)).toBe(page);
  });

  test("runs each command by the id that the page associates: in the ribbon, its menu, or the menu of a cell", () => {
    const run = (text: string) => [...text.matchAll(/<FunctionName>([^<]+)<\/FunctionName>/g)].map((match) => match[1]);
    expect(run(xml)).toEqual([...COMMAND_IDS]);
    expect(run(xml.slice(xml.indexOf('<OfficeMenu id="ContextMenuCell">')))).toEqual(["showWorking"]);
    expect(run(xml.slice(xml.indexOf("<Items>"), xml.indexOf("</Items>")))).toEqual([
      "repairFormulas",
      "turnIntoValues",
      "openWithWorkbook",
    ]);
    const ids = [...xml.matchAll(/<(?:Control|Item)[^>]* id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("leads to the keys of commands, the same that the unified manifest gives, each command's own and none that Excel refuses", () => {
    expect(xml).toContain(`<ExtendedOverrides Url="${origin}/shortcuts.json?v=${addinDescription.version}"/>`);
    const { actions, shortcuts: keys } = shortcuts(addinDescription);
    expect(actions.map(({ id }) => id)).toEqual(keys.map(({ action }) => action));
    for (const { id } of actions) expect(COMMAND_IDS).toContain(id);
    expect(new Set(keys.map(({ key }) => key.default)).size).toBe(keys.length);
    const unified = jsonManifest(addinDescription, origin).extensions[0]!;
    expect(unified.keyboardShortcuts[0]!.shortcuts).toEqual(keys.map(({ action, key }) => ({ key, actionId: action })));
    const functions = unified.runtimes[0]!.actions.filter(({ type }) => type === "executeFunction").map(({ id }) => id);
    for (const { action } of keys) expect(functions).toContain(action);
  });

  test("demands the requirement sets the add-in is written for, and no newer ones", () => {
    const sets = [...xml.matchAll(/<Set Name="([^"]+)" MinVersion="([^"]+)"\/>/g)].map((match) => `${match[1]} ${match[2]}`);
    expect(sets).toEqual(["SharedRuntime 1.1", "CustomFunctionsRuntime 1.3", "ExcelApi 1.9"]);
  });

  test("gives functions.json a new address with each version, because Excel keeps it for a day", () => {
    expect(xml).toContain(`id="functions-metadata" DefaultValue="${origin}/functions.json?v=${addinDescription.version}"`);
  });
});
