//! How much of each thing there may be: the limit itself, and one more.

use super::*;

/// The codes and messages that a catalog of these texts causes.
fn said(text: &str) -> String {
    let (loaded, findings, _) = load_files(&[("c/catalog.toml", &format!("{HEAD}{text}"))]);
    assert_eq!(loaded.is_some(), findings.is_empty());
    findings
        .iter()
        .map(|f| format!("{} {}\n", f.code(), f.message()))
        .collect()
}

fn attributes(count: usize) -> String {
    (0..count)
        .map(|at| format!("[[attribute]]\nid = \"a{at}\"\nlabel = \"A\"\noptions = [{{ id = \"x\" }}]\nstandard = \"x\"\n"))
        .collect()
}

#[test]
fn a_catalog_has_at_most_512_attributes_parts_counted() {
    assert_eq!(said(&attributes(512)), "");
    expect![[r#"
        LIMIT there are 513 attributes; the most there may be is 512
    "#]]
    .assert_eq(&said(&attributes(513)));
    let parts = "[[part]]\nid = \"p\"\nkind = \"sash\"\nlabel = \"P\"\n[[part]]\nid = \"q\"\nkind = \"sash\"\nlabel = \"P\"\n";
    let per = attributes(257).replace("standard", "per = \"sash\"\nstandard");
    expect![[r#"
        LIMIT there are 514 attributes; the most there may be is 512
    "#]]
    .assert_eq(&said(&format!("{parts}{per}")));
}

#[test]
fn an_attribute_has_at_most_4096_options() {
    let options = |count: usize| {
        let options: Vec<String> = (0..count).map(|at| format!("{{ id = \"o{at}\" }}")).collect();
        format!(
            "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{}]\nstandard = \"o0\"\n",
            options.join(", ")
        )
    };
    assert_eq!(said(&options(4_096)), "");
    expect![[r#"
        LIMIT there are 4097 options of attribute `a`; the most there may be is 4096
    "#]]
    .assert_eq(&said(&options(4_097)));
}

#[test]
fn rules_items_and_figures_have_limits() {
    let many = |count: usize, text: &str| -> String {
        (0..count).map(|at| text.replace('#', &at.to_string())).collect()
    };
    let rule = "[[rule]]\nid = \"r#\"\nrequire = \"true\"\nmessage = \"m\"\n";
    expect![[r#"
        LIMIT there are 10001 rules; the most there may be is 10000
    "#]]
    .assert_eq(&said(&many(10_001, rule)));
    let item = "[[price]]\nid = \"i#\"\nlabel = \"I\"\n";
    expect![[r#"
        LIMIT there are 10001 price items; the most there may be is 10000
    "#]]
    .assert_eq(&said(&many(10_001, item)));
    let figure = "[[figure]]\nid = \"g#\"\nlabel = \"G\"\nformula = \"1\"\n";
    expect![[r#"
        LIMIT there are 4097 figures; the most there may be is 4096
    "#]]
    .assert_eq(&said(&many(4_097, figure)));
}

#[test]
fn a_catalog_includes_at_most_a_thousand_files() {
    let includes: Vec<String> = (0..1_000).map(|at| format!("\"f{at}.toml\"")).collect();
    let catalog = format!("include = [{}]\n{HEAD}", includes.join(", "));
    let mut files: Vec<(String, &str)> = (0..1_000)
        .map(|at| (format!("c/f{at}.toml"), "format = 1\n"))
        .collect();
    files.push(("c/catalog.toml".to_owned(), &catalog));
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (path.as_str(), *text)).collect();
    let (loaded, findings, _) = load_files(&files);
    assert!(loaded.is_none());
    let said: Vec<String> = findings
        .iter()
        .map(|f| format!("{} {}\n", f.code(), f.message()))
        .collect();
    expect![[r#"
        LIMIT the catalog includes more than 1000 files, the most that are read
    "#]]
    .assert_eq(&said.concat());
}

#[test]
fn an_expression_written_out_over_parts_has_at_most_a_hundred_thousand_nodes() {
    let parts: String = (0..60)
        .map(|at| format!("[[part]]\nid = \"p{at}\"\nkind = \"sash\"\nlabel = \"P\"\n"))
        .collect();
    let figures = "[[figure]]\nid = \"f\"\nlabel = \"F\"\nper = \"sash\"\nformula = \"1\"\n";
    let figure = |at: usize, terms: usize| {
        let terms = vec!["f"; terms].join(" + ");
        format!("[[figure]]\nid = \"g{at}\"\nlabel = \"G\"\nformula = 'sum(sum({terms}))'\n")
    };
    assert_eq!(said(&format!("{parts}{figures}{}", figure(0, 20))), "");
    expect![[r#"
        LIMIT written out over the parts this has at least 100001 terms and operators; the most there may be is 100000
    "#]]
    .assert_eq(&said(&format!("{parts}{figures}{}", figure(0, 500))));
    let many: String = (0..65).map(|at| figure(at, 25)).collect();
    expect![[r#"
        LIMIT the expressions of the catalog, written out over the parts, have at least 5000001 terms and operators; the most there may be is 5000000
    "#]]
    .assert_eq(&said(&format!("{parts}{figures}{many}")));
}
