#!/usr/bin/env bash
# Installs ortools into .outside/ortools, builds the engine, and prints its cheapest beside CP-SAT's. Arguments go to cp_sat.py.
set -euo pipefail
cd "$(dirname "$0")/.."
python="$PWD/.outside/ortools"
[ -x "$python/bin/python" ] || python3 -m venv "$python"
"$python/bin/pip" install --quiet --disable-pip-version-check ortools==9.15.6755
cargo build --release --locked --quiet --example instance
"$python/bin/python" benches/cp_sat.py "${CARGO_TARGET_DIR:-target}/release/examples/instance" "$@"
