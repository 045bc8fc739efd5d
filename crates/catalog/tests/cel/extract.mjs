// Takes the conformance data of the CEL project out of the npm package `@bufbuild/cel-spec` and writes it as plain JSON.
//
//   node crates/catalog/tests/cel/extract.mjs
//
// Reads: the package, fetched by `npm pack` into `.outside/cel` of the repository and never installed or committed.
// Writes, beside this script: `conformance.json`, one test a line, and `NOTICE.txt`, which says where it is from.
//
// A file of tests is taken whole or not at all. What is left out, and why, is in LEFT_OUT and is written into the JSON
// with its counts; a file of the package that is in neither list stops the script. Of a test everything is kept but its
// description and what the package adds to it (the trees and types of another implementation).

import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const PACKAGE = "@bufbuild/cel-spec";
const VERSION = "0.6.1";

const TAKEN = [
  "basic", "comparisons", "conversions", "fields", "fp_math", "integer_math", "lists", "logic", "macros", "macros2",
  "namespace", "parse", "plumbing", "string", "timestamps", "type_deductions",
];

const PROTOBUF = "values of protobuf messages, which catalogs do not have";
const EXTENSION = "an extension library, not the language";
const LEFT_OUT = {
  dynamic: PROTOBUF, enums: PROTOBUF, proto2: PROTOBUF, proto3: PROTOBUF, wrappers: PROTOBUF,
  proto2_ext: EXTENSION, bindings_ext: EXTENSION, block_ext: EXTENSION, encoders_ext: EXTENSION, math_ext: EXTENSION,
  optionals: EXTENSION, string_ext: EXTENSION,
  unknowns: "holds no test",
};

const here = dirname(fileURLToPath(import.meta.url));
const work = join(here, "../../../../.outside/cel");

function fetchPackage() {
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  const options = { cwd: work, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] };
  const archive = execFileSync("npm", ["pack", `${PACKAGE}@${VERSION}`], options).trim().split("\n").at(-1);
  execFileSync("tar", ["xzf", archive], options);
  return join(work, "package");
}

// The tests of a suite and of the suites in it, each with the names of the suites below the file.
function* testsOf(suite, section) {
  for (const { original } of suite.tests ?? []) {
    const { name, description, expr, ...rest } = original;
    yield { section, name, expression: expr, ...rest };
  }
  for (const inner of suite.suites ?? []) {
    yield* testsOf(inner, section === "" ? inner.name : `${section}/${inner.name}`);
  }
}

const folder = fetchPackage();
const about = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
const data = await import(pathToFileURL(join(folder, "dist/esm/testdata/conformance.js")));

const tests = [];
const leftOut = [];
for (const file of data.tests.suites) {
  const ofFile = [...testsOf(file, "")];
  if (TAKEN.includes(file.name)) {
    tests.push(...ofFile.map((test) => ({ file: file.name, ...test })));
  } else if (file.name in LEFT_OUT) {
    leftOut.push({ file: file.name, tests: ofFile.length, reason: LEFT_OUT[file.name] });
  } else {
    throw new Error(`the file \`${file.name}\` is neither taken nor left out`);
  }
}

const head = {
  package: PACKAGE, version: about.version, licence: about.license, specification: about.upstreamCelSpecRef,
};
const lines = (list) => list.map((entry) => JSON.stringify(entry)).join(",\n");
writeFileSync(
  join(here, "conformance.json"),
  `{\n"source": ${JSON.stringify(head)},\n"left_out": [\n${lines(leftOut)}\n],\n"tests": [\n${lines(tests)}\n]\n}\n`,
);
writeFileSync(join(here, "NOTICE.txt"), `\
conformance.json holds conformance tests of the Common Expression Language (CEL).

They were written by the CEL project (https://github.com/google/cel-spec, ${about.upstreamCelSpecRef}) and are distributed by Buf
Technologies, Inc. in the npm package ${PACKAGE}, version ${about.version}:

    Copyright 2024-2026 Buf Technologies, Inc.

    Licensed under the Apache License, Version 2.0 (the "License");
    you may not use this file except in compliance with the License.
    You may obtain a copy of the License at

        http://www.apache.org/licenses/LICENSE-2.0

    Unless required by applicable law or agreed to in writing, software
    distributed under the License is distributed on an "AS IS" BASIS,
    WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
    See the License for the specific language governing permissions and
    limitations under the License.

The package holds no NOTICE file of its own. A copy of the licence is LICENSE-APACHE at the root of this repository.

Changed: extract.mjs took ${tests.length} tests of ${TAKEN.length} files out of the package, dropped their descriptions, trees and inferred types, and
wrote them as JSON, one test a line. Nothing of a test that was kept was altered. The tests are used by the crate's own
tests only; no program or library that is built holds them.
`);

const sum = leftOut.reduce((all, entry) => all + entry.tests, 0);
console.log(`${tests.length} tests of ${TAKEN.length} files taken, ${sum} of ${leftOut.length} files left out`);
