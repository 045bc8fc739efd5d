"""Writes what the package `pint` makes of the texts it is given: an outside check of lengths and areas.

Reads one case a line from standard input, `magnitude<TAB>unit of pint<TAB>target unit of pint`; the magnitude is
an exact fraction such as `285/8`. Writes for each the exact fraction in the target unit, in the same order.
Numbers are `fractions.Fraction` throughout, so nothing is rounded. The first line says which version answered.
"""

import sys
from fractions import Fraction

import pint

units = pint.UnitRegistry(non_int_type=Fraction)
print(f"pint {pint.__version__}")
for line in sys.stdin:
    magnitude, unit, target = line.rstrip("\n").split("\t")
    answer = units.Quantity(Fraction(magnitude), unit).to(target).magnitude
    if not isinstance(answer, (Fraction, int)):
        sys.exit(f"not exact: {line!r} gives {answer!r}")
    print(Fraction(answer))
