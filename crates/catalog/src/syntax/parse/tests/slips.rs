//! What is not in the subset, and slips of the pen: each named, with what to write in its place.

use expect_test::expect;

use super::check_errors;

#[test]
fn literals_that_cel_has_and_the_subset_has_not_are_refused_by_name() {
    check_errors(
        &[
            "a % 2",
            "a == null",
            r#"b"x" == a"#,
            "rb'x' == a",
            r#""""x""""#,
            "a > 1u",
            "a > 0x1F",
            "a > .5",
        ],
        expect![[r#"
            a % 2
              ^ `%` (the remainder) is CEL but not in astragal's subset

            a == null
                 ^^^^ `null` (the missing value) is CEL but not in astragal's subset
            help: a condition on what may not be asked is written `is_asked(x)`

            b"x" == a
            ^^ `b"` (a bytes or raw literal) is CEL but not in astragal's subset
            help: write the text in quotes without a prefix

            rb'x' == a
            ^^^ `rb'` (a bytes or raw literal) is CEL but not in astragal's subset
            help: write the text in quotes without a prefix

            """x"""
            ^^^ `"""` (a text in triple quotes) is CEL but not in astragal's subset
            help: put the text in one pair of quotes

            a > 1u
                ^^ `1u` (an unsigned number) is CEL but not in astragal's subset
            help: write a decimal number, such as `12` or `0.5`

            a > 0x1F
                ^^^^ `0x1F` (a hexadecimal number) is CEL but not in astragal's subset
            help: write a decimal number, such as `12` or `0.5`

            a > .5
                ^^ `.5` (a number that begins with its point) is CEL but not in astragal's subset
            help: write a digit before the point: `0.5`
        "#]],
    );
}

#[test]
fn operations_that_cel_has_and_the_subset_has_not_are_refused_by_name() {
    check_errors(
        &[
            "{'a': 1}",
            "Window{w: 1}",
            "a[0]",
            "['a'][0]",
            "a.contains('x')",
            "a.all(x, x > 1)",
            "a.exists(x, x > 1)",
        ],
        expect![[r#"
            {'a': 1}
            ^ `{` (a map or a message) is CEL but not in astragal's subset
            help: lists are written `["white", "grey"]`

            Window{w: 1}
                  ^ `{` (a map or a message) is CEL but not in astragal's subset
            help: lists are written `["white", "grey"]`

            a[0]
             ^ `[` (an index) is CEL but not in astragal's subset
            help: lists are searched with `in`; parts and properties are named with a dot

            ['a'][0]
                 ^ `[` (an index) is CEL but not in astragal's subset
            help: lists are searched with `in`; parts and properties are named with a dot

            a.contains('x')
              ^^^^^^^^ `.contains(...)` (a method call) is CEL but not in astragal's subset
            help: functions are called as `contains(...)`

            a.all(x, x > 1)
              ^^^ `.all(...)` (a macro) is CEL but not in astragal's subset
            help: over parts write `all(...)`

            a.exists(x, x > 1)
              ^^^^^^ `.exists(...)` (a macro) is CEL but not in astragal's subset
            help: over parts write `any(...)`
        "#]],
    );
}

#[test]
fn names_and_escapes_that_cel_has_and_the_subset_has_not_are_refused_by_name() {
    check_errors(
        &["`a-b` == 1", ".a == 1", "if a", "package == 1", r#"a == "\x41""#],
        expect![[r#"
            `a-b` == 1
            ^ a name in backquotes is CEL but not in astragal's subset
            help: write a name without quotes, a text in `"..."`

            .a == 1
            ^ `.` (a leading dot) is CEL but not in astragal's subset
            help: write the name without the dot

            if a
            ^^ found `if`, a word that CEL reserves, expected a value
            help: a choice between two values is written `condition ? a : b`

            package == 1
            ^^^^^^^ found `package`, a word that CEL reserves, expected a value
            help: no name can be a reserved word; a text is written in quotes

            a == "\x41"
                  ^^ found the escape `\x`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character
        "#]],
    );
}

#[test]
fn words_and_half_operators_are_told_the_operator() {
    check_errors(
        &[
            "a = b",
            "a and b",
            "a OR b",
            "not a",
            "not(a)",
            "a not in b",
            "a & b",
            "a | b",
            "a <> b",
            "a => b",
            "a =< b",
        ],
        expect![[r#"
            a = b
              ^ found `=`, which no expression holds
            help: compare with `==`

            a and b
              ^^^ found the name `and`, expected an operator or the end of the expression
            help: "and" is written `&&`

            a OR b
              ^^ found the name `OR`, expected an operator or the end of the expression
            help: "or" is written `||`

            not a
                ^ found the name `a`, expected an operator or the end of the expression
            help: "not" is written `!`

            not(a)
            ^^^ found `not`, which is no function
            help: "not" is written `!`

            a not in b
              ^^^ found the name `not`, expected an operator or the end of the expression
            help: "not" is written `!`, "not in" `!(x in y)`

            a & b
              ^ found `&`, which no expression holds
            help: "and" is written `&&`

            a | b
              ^ found `|`, which no expression holds
            help: "or" is written `||`

            a <> b
              ^^ found `<>`, which no expression holds
            help: "not equal" is written `!=`

            a => b
              ^^ found `=>`, which no expression holds
            help: "greater or equal" is written `>=`

            a =< b
              ^^ found `=<`, which no expression holds
            help: "less or equal" is written `<=`
        "#]],
    );
}

#[test]
fn signs_of_word_processors_are_told_what_to_type() {
    check_errors(
        &[
            "a ≥ 1",
            "a ≤ 1",
            "a ≠ 1",
            "a == “x”",
            "a == ‘x’",
            "a – b",
            "a × 2",
            "a > 35½",
            "a > ½",
            "a\u{a0}> 1",
            "größe > 1",
            "a; b",
        ],
        expect![[r#"
            a ≥ 1
              ^ found `≥`, which no expression holds
            help: "greater or equal" is written `>=`

            a ≤ 1
              ^ found `≤`, which no expression holds
            help: "less or equal" is written `<=`

            a ≠ 1
              ^ found `≠`, which no expression holds
            help: "not equal" is written `!=`

            a == “x”
                 ^ found `“`, which no expression holds
            help: use straight quotes, `"` or `'`

            a == ‘x’
                 ^ found `‘`, which no expression holds
            help: use straight quotes, `"` or `'`

            a – b
              ^ found `–`, which no expression holds
            help: minus is written `-`

            a × 2
              ^ found `×`, which no expression holds
            help: times is written `*`

            a > 35½
                ^^^ found `35½`, which is not a number
            help: a size is written in quotes and takes the unit of the other side: `"35 5/8"`

            a > ½
                ^ found `½`, which no expression holds
            help: a size is written in quotes: `"35 5/8"`

            a > 1
             ^ found an invisible character, U+00A0
            help: delete it, or type a plain space

            größe > 1
              ^ found `ö`, which no expression holds
            help: names are made of the letters a to z, digits and `_`

            a; b
             ^ found `;`, which no expression holds
            help: write a text in quotes, `"..."`
        "#]],
    );
}

#[test]
fn numbers_end_where_they_end() {
    check_errors(
        &[
            "a > 15in",
            "a > 1.",
            "a > 1.5.2",
            "a in 15..36",
            "a > 1,5",
            "a > 1e",
            "a > 1_000",
        ],
        expect![[r#"
            a > 15in
                ^^^^ found `15in`, which is not a number
            help: a size is written in quotes and takes the unit of the other side: `"35 5/8"`

            a > 1.
                ^^ found `1.`, which is not a number
            help: write a decimal number, such as `12` or `0.5`

            a > 1.5.2
                ^^^^^ found `1.5.2`, which is not a number
            help: write a decimal number, such as `12` or `0.5`

            a in 15..36
                 ^^^^^^ found `15..36`, which is not a number
            help: ranges stand in table cells; here write `x >= 15 && x <= 36`

            a > 1,5
                 ^ found `,`, expected an operator or the end of the expression
            help: decimals are written with a point: `35.5`

            a > 1e
                ^^ found `1e`, which is not a number
            help: write a decimal number, such as `12` or `0.5`

            a > 1_000
                ^^^^^ found `1_000`, which is not a number
            help: write a decimal number, such as `12` or `0.5`
        "#]],
    );
}

#[test]
fn escapes_that_are_none_are_errors() {
    check_errors(
        &[
            r#""\q""#,
            r#""\u12""#,
            r#""\ud800""#,
            r#""ab\U0001F600""#,
            r#""é\é""#,
        ],
        expect![[r#"
            "\q"
             ^^ found the escape `\q`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character

            "\u12"
             ^^^^ found the escape `\u12`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character

            "\ud800"
             ^^^^^^ found the escape `\ud800`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character

            "ab\U0001F600"
               ^^ found the escape `\U`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character

            "é\é"
              ^^ found the escape `\é`, which a text cannot hold
            help: the escapes are `\\`, `\'`, `\"`, `\n`, `\t` and `\uXXXX` with four hexadecimal digits of a character
        "#]],
    );
}
