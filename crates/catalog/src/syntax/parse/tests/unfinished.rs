//! Pieces that are missing, surplus or not closed.

use expect_test::expect;

use super::check_errors;

#[test]
fn missing_values_are_errors() {
    check_errors(
        &[
            "",
            "  // only a comment",
            "a &&",
            "&& a",
            "a + * b",
            "()",
            "f(,)",
            "f(a,)",
            "[,]",
            "[a,,b]",
        ],
        expect![[r#"

            ^ found nothing, expected an expression

              // only a comment
            ^^^^^^^^^^^^^^^^^^^ found nothing, expected an expression

            a &&
                ^ found the end of the expression, expected a value

            && a
            ^^ found `&&`, expected a value

            a + * b
                ^ found `*`, expected a value

            ()
             ^ found `)`, expected a value

            f(,)
              ^ found `,`, expected a value

            f(a,)
                ^ found `)`, expected a value

            [,]
             ^ found `,`, expected a value

            [a,,b]
               ^ found `,`, expected a value
        "#]],
    );
}

#[test]
fn missing_operators_and_names_are_errors() {
    check_errors(
        &["a b", "a 1", "a 'x'", "a.", "a.1", "a.in", "a.null"],
        expect![[r#"
            a b
              ^ found the name `b`, expected an operator or the end of the expression
            help: put an operator between two values, such as `==`, `&&` or `+`

            a 1
              ^ found the number `1`, expected an operator or the end of the expression
            help: put an operator between two values, such as `==`, `&&` or `+`

            a 'x'
              ^^^ found the text `'x'`, expected an operator or the end of the expression
            help: put an operator between two values, such as `==`, `&&` or `+`

            a.
              ^ found the end of the expression, expected a name after `.`

            a.1
             ^^ `.1` (a number that begins with its point) is CEL but not in astragal's subset
            help: write a digit before the point: `0.1`

            a.in
              ^^ found `in`, expected a name after `.` that is no keyword of CEL

            a.null
              ^^^^ found the name `null`, expected a name after `.` that is no keyword of CEL
        "#]],
    );
}

#[test]
fn conditionals_and_prefixes_out_of_place_are_errors() {
    check_errors(
        &[
            "a ?",
            "a ? b",
            "a ? b ? c : d : e",
            "a : b",
            "!-a",
            "-!a",
            "a, b",
            "a === b",
            "a ! b",
            "f(a ? b)",
        ],
        expect![[r#"
            a ?
               ^ found the end of the expression, expected a value

            a ? b
                 ^ found the end of the expression, expected `:`
              ^ this `?` needs a `:`

            a ? b ? c : d : e
                  ^ found a second `?` before the `:` of the first
              ^ the first `?` is here
            help: put the inner conditional in parentheses: `a ? (b ? c : d) : e`

            a : b
              ^ found `:`, expected an operator or the end of the expression
            help: `:` belongs to a conditional, `condition ? a : b`

            !-a
             ^ found `-`, expected a value
            help: CEL does not mix `!` and `-`: use parentheses

            -!a
             ^ found `!`, expected a value
            help: CEL does not mix `!` and `-`: use parentheses

            a, b
             ^ found `,`, expected an operator or the end of the expression
            help: commas stand only in lists `[a, b]` and calls `f(a, b)`

            a === b
                ^ found `=`, which no expression holds
            help: compare with `==`

            a ! b
              ^ found `!`, expected an operator or the end of the expression

            f(a ? b)
                   ^ found `)`, expected `:`
                ^ this `?` needs a `:`
        "#]],
    );
}

#[test]
fn brackets_and_quotes_that_are_not_closed_name_where_they_were_opened() {
    check_errors(
        &[
            "(a && (b || c)",
            "f(a, b",
            "[a, b",
            "(a]",
            "[a)",
            "f(a b)",
            "a == \"x",
            "a == 'x\"",
            "\"x\\",
            "a\n== \"x\ny\"",
        ],
        expect![[r#"
            (a && (b || c)
            ^ found `(` that is not closed
                          ^ the expression ends here
            help: close it with `)`

            f(a, b
             ^ found `(` that is not closed
                  ^ the expression ends here
            help: close it with `)`

            [a, b
            ^ found `[` that is not closed
                 ^ the expression ends here
            help: close it with `]`

            (a]
              ^ found `]`, expected an operator or `)`
            ^ this `(` is still open
            help: close `(` with `)` first

            [a)
              ^ found `)`, expected an operator or `]`
            ^ this `[` is still open
            help: close `[` with `]` first

            f(a b)
                ^ found the name `b`, expected an operator or `)`
             ^ this `(` is still open
            help: put an operator between two values, such as `==`, `&&` or `+`

            a == "x
                 ^ found a quote `"` that is not closed on its line
                   ^ the line ends here
            help: close the text with `"`; inside it write `\"`

            a == 'x"
                 ^ found a quote `'` that is not closed on its line
                    ^ the line ends here
            help: close the text with `'`; inside it write `\'`

            "x\
            ^ found a quote `"` that is not closed on its line
              ^ the line ends here
            help: close the text with `"`; inside it write `\"`

            a
            == "x
            y"
                 ^ found a quote `"` that is not closed on its line
                   ^ the line ends here
            help: close the text with `"`; inside it write `\"`
        "#]],
    );
}

#[test]
fn brackets_that_close_nothing_are_errors() {
    check_errors(
        &["a)", "a]", ")", "f(a))"],
        expect![[r#"
        a)
         ^ found `)`, expected an operator or the end of the expression
        help: remove it, or write the bracket that opens it

        a]
         ^ found `]`, expected an operator or the end of the expression
        help: remove it, or write the bracket that opens it

        )
        ^ found `)`, expected a value
        help: remove it, or write the bracket that opens it

        f(a))
            ^ found `)`, expected an operator or the end of the expression
        help: remove it, or write the bracket that opens it
    "#]],
    );
}
