//! What CEL has and the subset has not: each group by how the reader of catalogs refuses it.
//!
//! `size([])` is refused with "`size` is not a function": the group *functions of lists and texts*. The groups are a list
//! that was read through, test by test, for expressions that a user of the subset would expect to work; an expression
//! that is refused in another way fails the test.

use crate::answer::Refusal;
use crate::data::Test;

/// A group of what is outside, as the page lists it.
pub(crate) struct Group {
    pub(crate) name: &'static str,
    /// The code of the errors.
    code: &'static str,
    /// What their messages hold: one of these.
    says: &'static [&'static str],
    /// How many tests of the data are outside for it.
    pub(crate) tests: usize,
}

/// Names that a test binds or declares, of things that no catalog can declare: maps, messages, names with a dot.
const STRANGE_NAMES: &str = "maps, messages and names with a dot, as bound names";

/// All groups.
pub(crate) const OUTSIDE: [Group; 19] = [
    syntax("maps and messages `{...}`", &["(a map or a message)"], 231),
    syntax("unsigned numbers `1u`", &["(an unsigned number)"], 156),
    syntax("method calls `a.f(x)`", &["(a method call)"], 95),
    syntax("macros `has`, `all`, `exists`, `map`, ...", &["(a macro)"], 47),
    syntax("texts in triple quotes", &["(a text in triple quotes)"], 78),
    syntax(
        "bytes and raw texts `b\"\"`, `r\"\"`",
        &["(a bytes or raw literal)"],
        69,
    ),
    syntax("`null`", &["(the missing value)"], 27),
    syntax("indexing `a[0]`", &["(an index)"], 21),
    syntax("the remainder `%`", &["(the remainder)"], 15),
    syntax("hexadecimal numbers", &["(a hexadecimal number)"], 4),
    syntax(
        "numbers that begin with their point",
        &["(a number that begins with its point)"],
        1,
    ),
    syntax(
        "escapes but `\\\\ \\' \\\" \\n \\t \\uXXXX`",
        &["which a text cannot hold"],
        24,
    ),
    function("`dyn` and `type`", &["`dyn` is", "`type` is"], 72),
    function(
        "conversions `int`, `uint`, `double`, `string`, `bytes`, `bool`",
        &[
            "`int` is",
            "`uint` is",
            "`double` is",
            "`string` is",
            "`bytes` is",
            "`bool` is",
        ],
        65,
    ),
    function(
        "`timestamp` and `duration`",
        &["`timestamp` is", "`duration` is"],
        44,
    ),
    function("`size`", &["`size` is"], 8),
    function("functions of the host", &["`fn` is"], 1),
    Group {
        name: "types as values `int`, `list`, ...",
        code: "UNKNOWN_NAME",
        says: &[
            "`bool` is",
            "`int` is",
            "`uint` is",
            "`double` is",
            "`string` is",
            "`bytes` is",
            "`list` is",
            "`map` is",
            "`type` is",
            "`null_type` is",
            "`dyn` is",
            "`google` is",
        ],
        tests: 13,
    },
    Group {
        name: STRANGE_NAMES,
        code: "UNKNOWN_NAME",
        says: &["`x` is", "`a` is", "`msg` is"],
        tests: 11,
    },
];

const fn syntax(name: &'static str, says: &'static [&'static str], tests: usize) -> Group {
    Group {
        name,
        code: "SYNTAX",
        says,
        tests,
    }
}

const fn function(name: &'static str, says: &'static [&'static str], tests: usize) -> Group {
    Group {
        name,
        code: "UNKNOWN_FUNCTION",
        says,
        tests,
    }
}

/// The group of an error; `None` when it is in none.
pub(crate) fn outside(test: &Test, refusal: &Refusal) -> Option<&'static str> {
    let found = OUTSIDE.iter().find(|group| {
        group.code == refusal.code
            && group.says.iter().any(|says| refusal.message.contains(says))
            // A bare name that nothing declares is no construct that we lack.
            && (group.name != STRANGE_NAMES || test.declares)
    });
    found.map(|group| group.name)
}
