"""Compares the engine's answers to random problems with CP-SAT's: an outside check.

Reads a file of JSON lines, each `problem`, `picks` and the engine's `answers`. Prints a line a mismatch, beginning with the
problem's name, and last one JSON object that counts what was compared. Ends with 1 when anything differs, also where CP-SAT
has no proof. `--processes N` problems at a time, two by default; the order of what is printed is that of the file.

The options that can be had are found by asking for a configuration with as many options as possible that were not seen before, until
CP-SAT proves that there is none with any.
"""

import argparse
import json
import multiprocessing
import sys

import ortools
from cp_sat_model import Instance
from ortools.sat.python import cp_model

SECONDS_MAX = 60.0


class Asked:
    """One problem, asked any number of times, each time with some literals that must hold."""

    def __init__(self, written):
        self.instance = Instance(written)
        self.solves = 0

    def solve(self, objective, maximise=False, hold=(), any_of=()):
        """The values of a best configuration, and the objective; None when there is none."""
        model = self.instance.model.clone()
        for literal in hold:
            model.add(literal == 1)
        if any_of:
            model.add_bool_or(any_of)
        (model.maximize if maximise else model.minimize)(objective)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        # Small problems: reading them takes longer than searching, so that less is prepared.
        solver.parameters.linearization_level = 0
        solver.parameters.cp_model_probing_level = 0
        solver.parameters.max_time_in_seconds = SECONDS_MAX
        status = solver.solve(model)
        self.solves += 1
        if status == cp_model.INFEASIBLE:
            return None
        if status != cp_model.OPTIMAL:
            raise RuntimeError(f"no proof: {solver.status_name(status)}")
        return [solver.value(value) for value in self.instance.value], round(solver.objective_value)

    def possible(self, hold, attributes):
        """By attribute the options that go with what must hold; of these attributes alone."""
        literal = self.instance.literal
        seen = {at: set() for at in attributes}
        while True:
            unseen = [one for at in attributes for o, one in enumerate(literal[at]) if o not in seen[at]]
            found = unseen and self.solve(sum(unseen), maximise=True, hold=hold, any_of=unseen)
            if not found:
                return {at: sorted(options) for at, options in seen.items()}
            for at in attributes:
                seen[at].add(found[0][at])

    def free(self, picks):
        """By attribute the options that go with all picks of other attributes."""
        literal = self.instance.literal
        everything = [literal[at][o] for at, o in picks.items()]
        free = self.possible(everything, [at for at in range(len(literal)) if at not in picks])
        for at in picks:
            others = [literal[other][o] for other, o in picks.items() if other != at]
            free |= self.possible(others, [at])
        return [free[at] for at in range(len(literal))]

    def fewest(self, picks, hold=()):
        """The fewest picks that change, and the least total among those; None when nothing holds."""
        literal = self.instance.literal
        changed = sum(1 - literal[at][o] for at, o in picks.items()) if picks else 0
        scale = 2 * self.instance.largest + 1
        found = self.solve(scale * changed + self.instance.total, hold=hold)
        if found is None:
            return None, None
        changes = sum(found[0][at] != o for at, o in picks.items())
        return changes, found[1] - scale * changes


def differences(line):
    """Every answer that differs, as text, and how many were compared."""
    case = json.loads(line)
    answers, name = case["answers"], case["problem"]["name"]
    asked = Asked(case["problem"])
    position, literal = asked.instance.position, asked.instance.literal
    picks = {position[one]: option for one, option in case["picks"].items()}
    different = []

    def same(what, ours, theirs):
        if ours != theirs:
            different.append(f"{name}: {what}: the engine says {ours}, CP-SAT {theirs}")

    try:
        possible = asked.possible([], range(len(literal)))
        same("possible", answers["possible"], [possible[at] for at in range(len(literal))])
        same("cheapest", answers["cheapest"], asked.fewest({})[1])
        same("picked", [answers["changes"], answers["total"]], list(asked.fewest(picks)))
        same("free", answers["free"], asked.free(picks))
        for one in answers["asked"]:
            at = position[one["attribute"]]
            others = {other: option for other, option in picks.items() if other != at}
            fewest = list(asked.fewest(others, hold=[literal[at][one["option"]]]))
            same(f"{one['attribute']}={one['option']}", [one["changes"], one["total"]], fewest)
    except RuntimeError as error:
        different.append(f"{name}: {error}")
    options = sum(map(len, literal))
    return different, {"problems": 1, "options": 2 * options, "asked": len(answers["asked"]), "solves": asked.solves}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("file")
    parser.add_argument("--processes", type=int, default=2)
    arguments = parser.parse_args()
    with open(arguments.file, encoding="utf-8") as file:
        lines = file.readlines()
    counts, is_same = {"ortools": ortools.__version__}, True
    with multiprocessing.Pool(arguments.processes) as pool:
        for different, counted in pool.imap(differences, lines):
            for text in different:
                print(text)
                is_same = False
            for key, count in counted.items():
                counts[key] = counts.get(key, 0) + count
    print(json.dumps(counts))
    sys.exit(0 if is_same else 1)


if __name__ == "__main__":
    main()
