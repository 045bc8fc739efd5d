"""An instance as a CP-SAT model, for checks and benches: one integer an attribute, one literal an option.

Reads the format of `crates/core/tests/instances/README.md`. Tables are tables, clauses are clauses, and a pair price is one more
integer that a table ties to its two attributes. Nothing here is shared with the engine.

Source: PyPI `ortools`, Google's CP-SAT.
"""

from ortools.sat.python import cp_model


class Instance:
    """A model with its literals: `literal[a][o]` says that the attribute at position a has option o."""

    def __init__(self, written):
        self.model = cp_model.CpModel()
        self.names = [one["name"] for one in written["attributes"]]
        self.position = {name: at for at, name in enumerate(self.names)}
        self.value = []
        self.literal = []
        for one in written["attributes"]:
            value = self.model.new_int_var(0, one["options"] - 1, one["name"])
            literals = [self.model.new_bool_var(f"{one['name']}={o}") for o in range(one["options"])]
            self.model.add_exactly_one(literals)
            self.model.add(value == sum(o * literal for o, literal in enumerate(literals)))
            self.value.append(value)
            self.literal.append(literals)
        for table in written.get("tables", []):
            self.model.add_allowed_assignments(self.scope(table), table["allowed"])
        for clause in written.get("clauses", []):
            members = [(self.position[one["attribute"]], one["options"]) for one in clause]
            self.model.add_bool_or([self.literal[at][o] for at, options in members for o in options])
        self.total = sum(
            price * literal
            for literals, prices in zip(self.literal, written["option_prices"])
            for literal, price in zip(literals, prices)
        )
        self.largest = sum(max(map(abs, prices)) for prices in written["option_prices"])
        for pair in written.get("pair_prices", []):
            self.add_pair(pair)

    def scope(self, written):
        return [self.value[self.position[name]] for name in written["scope"]]

    def add_pair(self, pair):
        prices = sorted({price for row in pair["price"] for price in row})
        paid = self.model.new_int_var_from_domain(cp_model.Domain.from_values(prices), "paid")
        rows = [(f, s, price) for f, row in enumerate(pair["price"]) for s, price in enumerate(row)]
        self.model.add_allowed_assignments([*self.scope(pair), paid], rows)
        self.total += paid
        self.largest += max(map(abs, prices))
