"""Writes the names of enumerations in published IFC schemas: an outside check of the terms for how windows open.

Reads one question a line from standard input, `schema<TAB>enumeration`. Writes for each its literals, separated by spaces, in the
same order; an empty line where the schema has no such enumeration. The first line says which version answered.

Source: PyPI `ifcopenshell`, which carries the schemas.
"""

import sys

import ifcopenshell
from ifcopenshell import ifcopenshell_wrapper as wrapper

print(f"ifcopenshell {ifcopenshell.version}")
for line in sys.stdin:
    schema, enumeration = line.rstrip("\n").split("\t")
    declared = {one.name(): one for one in wrapper.schema_by_name(schema).declarations()}
    found = declared.get(enumeration)
    print(" ".join(found.as_enumeration_type().enumeration_items()) if found else "")
