//! The longest and deepest expressions.

use super::*;

#[test]
fn the_longest_and_deepest_expressions_are_judged_on_a_small_stack() {
    let chain = |first: &str, more: &str, count: usize| format!("{first}{}", more.repeat(count));
    let of_wet = r#"exterior == "white""#;
    let negations = format!("{}1 > -9", "-".repeat(62));
    let conditions: Vec<(&str, String)> = vec![
        ("product", format!("{} > 0", chain("1", "*3", 63))),
        ("quotient", format!("{} > 0", chain("1", "/3", 63))),
        ("sum", format!("{} > 0", chain("1", "+3", 20_000))),
        ("difference", format!("{} < 2", chain("1", "-3", 20_000))),
        (
            "nested differences",
            format!("{}1{} > -9", "1-(".repeat(60), ")".repeat(60)),
        ),
        ("and", chain("true", "&&true", 9_000)),
        ("or", chain("true", "||true", 9_000)),
        ("not", format!("{}(true)", "!".repeat(64))),
        ("negations", negations),
        ("conditionals", format!("{}true", "true?true:".repeat(64))),
        (
            "comparisons",
            format!("{}true{}", "true==(".repeat(60), ")".repeat(60)),
        ),
        (
            "in",
            format!("exterior in [{}]", chain("\"white\"", ",\"white\"", 6_000)),
        ),
        (
            "calls",
            format!("{}1{} >= 0", "max(0,".repeat(60), ")".repeat(60)),
        ),
        (
            "any in all",
            format!(
                "all(any({}{of_wet} && trim == \"a\"{}))",
                "!!(".repeat(18),
                ")".repeat(18)
            ),
        ),
    ];
    let parts = "[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\nwhen = 'exterior == \"white\"'\n[[attribute]]\nid = \"trim\"\nlabel = \"T\"\nper = \"sash\"\noptions = [{ id = \"a\" }]\nstandard = \"a\"\n";
    for (row, condition) in conditions {
        let rest = format!(
            "{parts}[[rule]]\nid = \"long\"\nrequire = '{condition}'\nmessage = \"m\"\n[[example]]\nid = \"e\"\ndate = 2026-11-25\n"
        );
        let text = catalog("c", &rest);
        let work = move || {
            let report = report(&[("c/catalog.toml", &text)], "c");
            let judged = report.findings.into_iter();
            let wrong: Vec<Finding> = judged.filter(|f| f.code() != "RULE_WITHOUT_EXAMPLE").collect();
            lines_of(&wrong, &report.sources)
        };
        let small = std::thread::Builder::new().stack_size(512 * 1024);
        assert_eq!(small.spawn(work).unwrap().join().unwrap(), "", "{row}");
    }
}
