//! What cells hold, and what they may not hold.

use expect_test::{Expect, expect};

use super::super::error::shown;
use super::*;

/// Each cell's members with their places, or its error.
fn check(cells: &[&str], expected: Expect) {
    let lines = cells.iter().map(|text| match parse_cell(text) {
        Ok(Cell::Members(members)) => members.iter().map(|member| described(text, member)).collect(),
        Ok(cell) => format!("{text:?}: {cell:?}\n"),
        Err(error) => shown(text, &error),
    });
    expected.assert_eq(&lines.collect::<Vec<_>>().join("\n"));
}

fn described(cell: &str, member: &Member) -> String {
    let under = &cell[member.span.clone()];
    let placed = |end: &Placed| {
        assert_eq!(cell[end.span.clone()], end.text);
        format!("`{}`", end.text)
    };
    match &member.kind {
        MemberKind::Text(text) => {
            assert_eq!(under, text);
            format!("{:?} text `{text}`\n", member.span)
        }
        MemberKind::Range { lower, upper } => {
            let lower = lower
                .as_ref()
                .map(|l| placed(&l.value) + if l.open { " open" } else { "" });
            let (lower, upper) = (
                lower.unwrap_or_default(),
                upper.as_ref().map(placed).unwrap_or_default(),
            );
            format!(
                "{:?} range from {lower} to {upper}, written `{under}`\n",
                member.span
            )
        }
    }
}

#[test]
fn blank_cells_and_stars_are_told_apart() {
    check(
        &["", "  ", "*", " * "],
        expect![[r#"
        "": Blank

        "  ": Blank

        "*": Any

        " * ": Any
    "#]],
    );
}

#[test]
fn members_stand_between_bars() {
    check(
        &["white", " all-white | dark|2024-05-08 ", "35 5/8|35-5/8|12"],
        expect![[r#"
            0..5 text `white`

            1..10 text `all-white`
            13..17 text `dark`
            18..28 text `2024-05-08`

            0..6 text `35 5/8`
            7..13 text `35-5/8`
            14..16 text `12`
        "#]],
    );
}

#[test]
fn ranges_have_one_end_or_two() {
    check(
        &[
            "15..36",
            "15<..36",
            "..36",
            "15..",
            "15<..",
            " 35 5/8 .. 71 7/8 | 80 ",
            "35-5/8 < .. 36",
            "1.5..2.5",
            "-4..-1",
            "2024-01-01..2024-06-30",
        ],
        expect![[r#"
            0..6 range from `15` to `36`, written `15..36`

            0..7 range from `15` open to `36`, written `15<..36`

            0..4 range from  to `36`, written `..36`

            0..4 range from `15` to , written `15..`

            0..5 range from `15` open to , written `15<..`

            1..17 range from `35 5/8` to `71 7/8`, written `35 5/8 .. 71 7/8`
            20..22 text `80`

            0..14 range from `35-5/8` open to `36`, written `35-5/8 < .. 36`

            0..8 range from `1.5` to `2.5`, written `1.5..2.5`

            0..6 range from `-4` to `-1`, written `-4..-1`

            0..22 range from `2024-01-01` to `2024-06-30`, written `2024-01-01..2024-06-30`
        "#]],
    );
}

#[test]
fn members_that_are_missing_are_errors() {
    check(
        &["a||b", "|a", "a|", "a | | b", "|"],
        expect![[r#"
        a||b
         ^ found nothing beside `|`, expected a member of the set
        help: remove the bar, or write what is missing

        |a
        ^ found nothing beside `|`, expected a member of the set
        help: remove the bar, or write what is missing

        a|
         ^ found nothing beside `|`, expected a member of the set
        help: remove the bar, or write what is missing

        a | | b
          ^ found nothing beside `|`, expected a member of the set
        help: remove the bar, or write what is missing

        |
        ^ found nothing beside `|`, expected a member of the set
        help: remove the bar, or write what is missing
    "#]],
    );
}

#[test]
fn ranges_that_say_nothing_or_too_much_are_errors() {
    check(
        &[
            "..",
            "a| .. ",
            "<..",
            "<..36",
            "15..20..36",
            "15...36",
            "15>..36",
            "15..<36",
            "15..>36",
            "15<<..36 <",
            "<36",
            "15<36",
            "> 15",
            "3<5..9",
            ">=15",
        ],
        expect![[r#"
            ..
            ^^ found a range with nothing on both sides
            help: write one end or both, `15..36`, `15..` or `..36`; `*` holds everything

            a| .. 
               ^^ found a range with nothing on both sides
            help: write one end or both, `15..36`, `15..` or `..36`; `*` holds everything

            <..
            ^^^ found a range with nothing on both sides
            help: write one end or both, `15..36`, `15..` or `..36`; `*` holds everything

            <..36
            ^^^^^ found `<..` without a lower end
            help: write the lower end, `15<..36`, or only the upper one, `..36`

            15..20..36
            ^^^^^^^^^^ found a range with more than one `..`
            help: a range has two ends; separate ranges with `|`: `15..20|30..36`

            15...36
            ^^^^^^^ found a range with more than one `..`
            help: a range has two ends; separate ranges with `|`: `15..20|30..36`

            15>..36
              ^^^ found `>..`, expected `..` or `<..`
            help: a range that does not hold its lower end is written `15<..36`

            15..<36
              ^^^ found a sign after `..`, expected the upper end
            help: a range always holds its upper end, `15..36`; only the lower end can be left out, `15<..36`

            15..>36
              ^^^ found a sign after `..`, expected the upper end
            help: a range always holds its upper end, `15..36`; only the lower end can be left out, `15<..36`

            15<<..36 <
                  ^^^^ found `<` in `36 <`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`

            <36
            ^^^ found `<` in `<36`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`

            15<36
            ^^^^^ found `<` in `15<36`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`

            > 15
            ^^^^ found `>` in `> 15`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`

            3<5..9
            ^^^ found `<` in `3<5`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`

            >=15
            ^^^^ found `>` in `>=15`, expected a member or a range
            help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`
        "#]],
    );
}

#[test]
fn signs_from_elsewhere_are_errors() {
    check(
        &[
            "*|a",
            "a*",
            "white, dark",
            "35,5",
            "15…36",
            "\"white\"",
            "35 5/8\"",
        ],
        expect![[r#"
            *|a
            ^ found `*` inside a cell
            help: `*` holds everything, so it stands alone

            a*
             ^ found `*` inside a cell
            help: `*` holds everything, so it stands alone

            white, dark
                 ^ found `,` inside a cell
            help: separate members with `|`: `white|dark`

            35,5
              ^ found `,` inside a cell
            help: decimals are written with a point: `35.5`

            15…36
              ^ found `…` inside a cell
            help: a range is written with two dots: `15..36`

            "white"
            ^ found `"` inside a cell
            help: leave the quotes out; a size in inches is written as `35 5/8`

            35 5/8"
                  ^ found `"` inside a cell
            help: leave the quotes out; a size in inches is written as `35 5/8`
        "#]],
    );
}

#[test]
fn what_looks_like_a_range_is_told_how_ranges_are_written() {
    for text in [
        "15-36",
        "15 - 36",
        "15 to 36",
        "15\u{2013}36",
        "15 5/8 to 36 1/2",
        "15-36 1/2",
    ] {
        assert!(range_help(text).is_some(), "{text}");
    }
    for text in [
        "35-5/8",
        "2024-05-08",
        "all-white",
        "12",
        "-5",
        "15-",
        "white to 36",
        "",
    ] {
        assert_eq!(range_help(text), None, "{text}");
    }
}
