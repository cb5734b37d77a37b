import { spawnSync } from "node:child_process";
import { existsSync, openSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { decoded } from "../../../addin/batch/decoded.ts";
import { builtBatch } from "./started-batch.ts";

let folder: string;
let script: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "soakbook-batch-truth-"));
  script = await builtBatch(folder);
});

afterAll(async () => {
  await rm(folder, { recursive: true });
});

function batch(words: readonly string[], input: string | Buffer, output: number | "pipe" = "pipe") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...words], { input, stdio: ["pipe", output, "pipe"] });
  return { code: status, stdout: String(stdout ?? ""), stderr: String(stderr) };
}

describe("what cannot be written is said", () => {
  test.runIf(existsSync("/dev/full"))("a full disk ends with 1 and a sentence", () => {
    for (const words of [["DRAWDOWN"], ["--list"]])
      expect(batch(words, "ponding,designRate\n6,0.5\n", openSync("/dev/full", "w"))).toMatchObject({
        code: 1,
        stderr: "The output could not be written: the disk is full. What was written before is not the whole of it.\n",
      });
  });

  test("whoever reads may stop early, and hears nothing of it", () => {
    const rows = "6,0.5\n".repeat(200_000);
    const command = `set -o pipefail; "${process.execPath}" "${script}" DRAWDOWN --headings ponding,designRate | head -n 1`;
    const { status, stdout, stderr } = spawnSync("bash", ["-c", command], { input: rows });
    expect([status, String(stdout), String(stderr)]).toEqual([0, "6,0.5,12,\n", ""]);
  });

  test("a stream that breaks off is refused in a sentence", async () => {
    const broken = new Readable({ read: () => undefined });
    broken.push(Buffer.from("6,0.5\n"));
    const words = decoded(broken, "utf-8");
    expect((await words.next()).value).toBe("6,0.5\n");
    broken.destroy(new Error("read EIO"));
    await expect(words.next()).rejects.toThrow("The stream cannot be read: read EIO");
  });
});

describe("bytes that are not UTF-8", () => {
  // Windows-1252, as the Unicode Consortium maps it: byte E9 is é, byte 80 the euro sign.
  const latin = Buffer.concat([
    Buffer.from("ponding,designRate,street\n6,0.5,Rue\n6,0.5,Caf"),
    Buffer.from([0xe9, 0x80]),
    Buffer.from("\n"),
  ]);

  test("are refused with their line, and the rows before them come out", () => {
    const { code, stdout, stderr } = batch(["DRAWDOWN"], latin);
    expect(code).toBe(1);
    expect(stdout).toBe("ponding,designRate,street,Drawdown,Error\n6,0.5,Rue,12,\n");
    expect(stderr).toBe(
      "In line 3 or after it stand bytes that are not UTF-8. Say what they are written in, such as --encoding windows-1252.\n",
    );
  });

  test("are read by the encoding that is named", () => {
    expect(batch(["DRAWDOWN", "--encoding", "windows-1252"], latin).stdout).toContain("6,0.5,Café€,12,\n");
    const wide = Buffer.from("\uFEFFponding,designRate\n6,0.5\n", "utf16le");
    expect(batch(["DRAWDOWN"], wide)).toMatchObject({ code: 1, stderr: expect.stringContaining("not UTF-8") as string });
    expect(batch(["DRAWDOWN", "--encoding", "utf-16le"], wide).stdout).toBe("ponding,designRate,Drawdown,Error\n6,0.5,12,\n");
  });

  test("are refused in JSON, at the end of a stream and in a file", async () => {
    const line = Buffer.concat([Buffer.from('{"ponding":6,"designRate":0.5,"street":"Caf'), Buffer.from([0xe9]), Buffer.from('"}\n')]);
    expect(batch(["DRAWDOWN", "--format", "ndjson"], line)).toMatchObject({
      code: 1,
      stdout: "",
      stderr: expect.stringContaining("line 1") as string,
    });
    const cut = Buffer.concat([Buffer.from("ponding,designRate\n6,0.5\n"), Buffer.from([0xc3])]);
    expect(batch(["DRAWDOWN"], cut)).toMatchObject({ code: 1, stderr: expect.stringContaining("line 3") as string });
    const path = join(folder, "prices.csv");
    await writeFile(path, Buffer.concat([Buffer.from("sand,40\nCaf"), Buffer.from([0xe9]), Buffer.from(",2\n")]));
    expect(batch(["PRICED", "--value", "item=sand", "--file", `prices=${path}`], "quantity\n2\n")).toMatchObject({
      code: 1,
      stderr: expect.stringContaining("not UTF-8") as string,
    });
    expect(
      batch(["PRICED", "--value", "item=sand", "--file", `prices=${path}`, "--encoding", "windows-1252"], "quantity\n2\n").stdout,
    ).toBe("quantity,Amount,Error\n2,80,\n");
  });

  test("an encoding that nobody knows is refused", () => {
    expect(batch(["DRAWDOWN", "--encoding", "klingon"], "")).toMatchObject({
      code: 1,
      stderr: 'There is no encoding "klingon": name one such as utf-8, windows-1252 or utf-16le.\n',
    });
  });
});

describe("what we did not make passes through unchanged", () => {
  const json = (line: string) => batch(["DRAWDOWN", "--format", "ndjson"], `${line}\n`).stdout;

  test("numbers beyond a double, and keys that stand twice, keep every digit", () => {
    expect(json('{"id":12345678901234567890123, "x":1e999,"x":0.10000000000000000001,"ponding":6,"designRate":0.5}')).toBe(
      '{"id":12345678901234567890123, "x":1e999,"x":0.10000000000000000001,"ponding":6,"designRate":0.5,"result":{"Drawdown":12}}\n',
    );
    expect(json('{"__proto__":{"a":1},"ponding":6,"designRate":0.5}')).toContain('{"__proto__":{"a":1},"ponding":6,');
  });

  test("keys named result and error stay, and ours are named for the function", () => {
    expect(json('{"result":"kept","error":"theirs","ponding":6}')).toBe(
      '{"result":"kept","error":"theirs","ponding":6,"result (DRAWDOWN)":null,"error (DRAWDOWN)":"Design rate is missing."}\n',
    );
    expect(json('{"result":1,"result (DRAWDOWN)":2,"ponding":6,"designRate":0.5}')).toContain(
      '"result (DRAWDOWN) (DRAWDOWN)":{"Drawdown":12}',
    );
  });

  test("a line that is no JSON object comes out with the sentence about it", () => {
    expect(JSON.parse(json('{"half": '))).toEqual({ line: '{"half":', result: null, error: "The line is not JSON." });
  });

  test("columns of a second run have names of their own, and cells beyond the headings come after the error", () => {
    const once = batch(["DRAWDOWN"], "ponding,designRate\n6,0.5\n").stdout;
    const twice = batch(["DRAWDOWN"], once).stdout;
    const thrice = batch(["DRAWDOWN"], twice).stdout;
    expect(thrice.split("\n")[0]).toBe(
      "ponding,designRate,Drawdown,Error,Drawdown (DRAWDOWN),Error (DRAWDOWN),Drawdown (DRAWDOWN) (DRAWDOWN),Error (DRAWDOWN) (DRAWDOWN)",
    );
    expect(batch(["DRAWDOWN"], "ponding,designRate\n6,0.5,spare,part\n").stdout).toContain(
      "6,0.5,,The row has 4 cells under 2 headings.,spare,part\n",
    );
    const long = "0012345678901234567890123";
    expect(batch(["DRAWDOWN"], `id,ponding,designRate\n${long},6,0.5\n`).stdout).toContain(`${long},6,0.5,12,\n`);
  });
});
