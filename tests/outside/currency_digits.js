// Writes what the package `currency-codes` (its copy of the ISO 4217 list) holds: an outside check of currencies.
//
// The first line names the package and the day of its list; each further line is `CODE<TAB>minor digits`.
// The package gives 0 digits to codes for which the standard says "N.A." (gold, testing).

const currencies = require("currency-codes");
const { version } = require("currency-codes/package.json");

const lines = currencies.data.map((entry) => `${entry.code}\t${entry.digits}`).sort();
process.stdout.write([`currency-codes ${version}, list of ${currencies.publishDate}`, ...lines].join("\n") + "\n");
