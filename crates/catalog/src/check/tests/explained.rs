//! A rule explained by its lines, its table and its examples.

use super::*;

#[test]
fn a_rule_is_explained_by_its_own_lines_its_table_and_its_examples() {
    let table = "\n[[rule]]\nid = \"pairs\"   # a remark\ntable = \"pairs.csv\"\nrows = \"allowed\"\nmessage = \"{exterior} alone.\"\nbasis = \"somewhere\"\nwaivable = true\neffect = \"warn\"\nauthority = \"code\"\n\n[[example]]\nid = \"both\"\npicks = [\n  { attribute = \"exterior\", option = \"grey\" },\n]\ndate = 2026-11-25\nbreaks = [\"no-grey\", \"pairs\"]\n[[rule]]\nid = \"long\"\ntable = \"long.csv\"\nrows = \"forbidden\"\nmessage = \"m\"\n";
    // More rows than are shown.
    let rows: Vec<String> = (0..=ROWS_SHOWN)
        .map(|year| format!("grey,{}..{}\n", year * 2, year * 2 + 1))
        .collect();
    let long = format!("exterior,year\n{}", rows.concat());
    let year = "[[site_fact]]\nid = \"year\"\nlabel = \"Year\"\nof = \"house\"\ntype = \"number\"\n";
    let files = [
        ("c/catalog.toml", catalog("c", &format!("{table}{year}"))),
        ("c/pairs.csv", "exterior\nwhite\n".to_owned()),
        ("c/long.csv", long),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    let report = report(&files, "");
    assert!(!report.has_errors());
    let [explained] = &report.explain("pairs")[..] else {
        panic!("one catalog has the rule")
    };
    expect![[r#"
        pairs of c by code Warn waivable true rows Some(1)
        {exterior} alone.
        Some("somewhere")
        c/catalog.toml:24
          [[rule]]
          id = "pairs"   # a remark
          table = "pairs.csv"
          rows = "allowed"
          message = "{exterior} alone."
          basis = "somewhere"
          waivable = true
          effect = "warn"
          authority = "code"
        c/pairs.csv:1
          exterior
          white
        c/catalog.toml:34
          [[example]]
          id = "both"
          picks = [
            { attribute = "exterior", option = "grey" },
          ]
          date = 2026-11-25
          breaks = ["no-grey", "pairs"]
        both false"#]]
    .assert_eq(&explained_lines(explained));
    assert_eq!(report.explain("no-such-rule"), []);
    let long = &report.explain("long")[0];
    assert_eq!(
        (long.row_count, long.table.is_none()),
        (Some(ROWS_SHOWN + 1), true)
    );
    assert_eq!(report.rule_ids().count(), 3);
}

fn explained_lines(it: &RuleExplanation) -> String {
    let mut out = format!(
        "{} of {} by {} {:?} waivable {} rows {:?}\n{}\n{:?}\n",
        it.rule, it.catalog, it.authority, it.effect, it.waivable, it.row_count, it.message, it.basis
    );
    let mut push = |lines: &SourceLines| {
        writeln!(
            out,
            "{}:{}\n  {}",
            lines.path,
            lines.first_line,
            lines.lines.join("\n  ")
        )
        .unwrap();
    };
    push(&it.lines);
    push(it.table.as_ref().unwrap());
    for example in &it.examples {
        push(&example.lines);
    }
    let alone: Vec<String> = it
        .examples
        .iter()
        .map(|it| format!("{} {}", it.id, it.is_alone))
        .collect();
    out + &alone.join(", ")
}
