"""The engine's cheapest total beside CP-SAT's, in one run: the same instance, the same answer, and how long each took.

    bash benches/cp_sat.sh                      # installs ortools, builds the engine, runs this
    python benches/cp_sat.py PROGRAM [--seconds N] [INSTANCE ...]

PROGRAM is the built example `instance`. CP-SAT's time is its solve alone: the model is built beforehand, 2 workers, the least of
three runs. The engine's is the median of 101 passes over a diagram that was compiled beforehand; compile time stands beside it. What
CP-SAT does not prove within the limit is told as that, and the ratio is then a lower bound. The answers must be equal where both
prove theirs, or the run ends with 1.
"""

import argparse
import json
import pathlib
import subprocess
import sys

import ortools

ROOT = pathlib.Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "outside"))
from cp_sat_model import Instance  # noqa: E402
from ortools.sat.python import cp_model  # noqa: E402

WORKERS = 2
RUNS = 3


def by_engine(program, file):
    output = subprocess.run([program, file, "--cheapest"], check=True, capture_output=True, text=True)
    summary, cheapest = map(json.loads, output.stdout.splitlines())
    return summary, cheapest


def by_cp_sat(file, seconds):
    """The least total, whether it is proven, and the seconds of the fastest solve."""
    instance = Instance(json.loads(file.read_text(encoding="utf-8")))
    instance.model.minimize(instance.total)
    fastest = None
    for _ in range(RUNS):
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = WORKERS
        solver.parameters.max_time_in_seconds = seconds
        status = solver.solve(instance.model)
        total = round(solver.objective_value) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
        one = (total, status == cp_model.OPTIMAL, solver.wall_time)
        if fastest is None or one[2] < fastest[2]:
            fastest = one
        if status != cp_model.OPTIMAL:
            break
    return fastest


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("instances", nargs="*", default=["vehicle-medium", "unit", "wide"])
    parser.add_argument("--seconds", type=float, default=60.0)
    arguments = parser.parse_args()
    print(f"CP-SAT of ortools {ortools.__version__}, {WORKERS} workers, limit {arguments.seconds:g} s")
    print(f"{'instance':<16}{'engine':>12}{'CP-SAT':>13}{'ratio':>10}{'compile':>12}  answers")
    is_same = True
    for name in arguments.instances:
        file = ROOT / "crates" / "core" / "tests" / "instances" / f"{name}.json"
        summary, cheapest = by_engine(arguments.program, file)
        total, is_proven, seconds = by_cp_sat(file, arguments.seconds)
        microseconds = cheapest["cheapest_us"]
        ratio = seconds * 1e6 / microseconds
        if is_proven:
            said = f"{cheapest['cheapest']} by both"
            if total != cheapest["cheapest"]:
                is_same = False
                said = f"DIFFERENT: {cheapest['cheapest']} and {total}"
        else:
            said = f"{cheapest['cheapest']}; CP-SAT reached {total}, not proven within {arguments.seconds:g} s"
        ratio = f"{'' if is_proven else '> '}{ratio:,.0f}"
        compiled = f"{summary['compile_ms']:.1f} ms"
        print(f"{name:<16}{microseconds:>9.1f} us{seconds * 1e3:>10.1f} ms{ratio:>10}{compiled:>12}  {said}", flush=True)
    sys.exit(0 if is_same else 1)


if __name__ == "__main__":
    main()
