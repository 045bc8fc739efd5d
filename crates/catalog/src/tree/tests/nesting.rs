//! How deep a file may be nested.

use super::*;

#[test]
fn nesting_ten_thousand_deep_is_a_finding() {
    for (path, text) in [
        ("a.toml", format!("a = {}", "[".repeat(10_000))),
        (
            "a.toml",
            format!("a = {}1{}", "[".repeat(10_000), "]".repeat(10_000)),
        ),
        ("a.toml", format!("a = {}", "{ a = ".repeat(10_000))),
        ("a.toml", format!("{}a = 1", "a.".repeat(10_000))),
        ("a.toml", format!("[{}a]", "a.".repeat(10_000))),
        (
            "a.toml",
            format!("[{}a]\n{}a = 1", "a.".repeat(50), "b.".repeat(50)),
        ),
        ("a.json", "[".repeat(10_000)),
        ("a.json", "{\"a\":".repeat(10_000)),
        ("a.json", format!("{}{}", "[".repeat(10_000), "]".repeat(10_000))),
    ] {
        let mut sources = Sources::new();
        let file = sources.add(path, text.as_str());
        let findings = Findings::new();
        let name = &text[..text.len().min(20)];
        assert!(read(&sources, file, &findings).is_none(), "{name}");
        let codes: Vec<_> = findings.into_sorted(&sources).iter().map(Finding::code).collect();
        assert!(codes.contains(&"TOO_DEEP"), "{name}: {codes:?}");
    }
}

#[test]
fn nesting_at_the_limit_is_read() {
    let deep = |levels: usize| format!("{}1{}", "[".repeat(levels), "]".repeat(levels));
    for (path, text, is_fine) in [
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT - 1)), true),
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT)), true),
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT + 1)), false),
        ("a.json", deep(DEPTH_LIMIT), true),
        ("a.json", deep(DEPTH_LIMIT + 1), false),
    ] {
        let mut sources = Sources::new();
        let file = sources.add(path, text.as_str());
        let findings = Findings::new();
        assert_eq!(
            read(&sources, file, &findings).is_some(),
            is_fine,
            "{path} {text}"
        );
    }
}
