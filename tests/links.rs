//! Links between the pages: every relative link names a file that is there and, after `#`, a heading of it.
//!
//! `[rules](catalog.md#a-size-limit)` in `docs/reference.md` holds when `docs/catalog.md` has the heading `A size limit`.
//!
//! What is not looked at: links to other places (`https:`), and whatever stands in code.
//! Source: how common renderers name headings: small letters, punctuation dropped, spaces to hyphens, from memory.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

const PAGES: [&str; 4] = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "examples/README.md"];

/// The lines of a page that are prose: with their numbers, without fenced blocks, without code between backticks.
fn prose(page: &str) -> Vec<(usize, String)> {
    let mut in_block = false;
    let mut lines = Vec::new();
    for (at, line) in page.lines().enumerate() {
        if line.trim_start().starts_with("```") {
            in_block = !in_block;
        } else if !in_block {
            lines.push((at + 1, line.to_owned()));
        }
    }
    lines
}

/// A line without what stands between backticks.
fn without_code(line: &str) -> String {
    line.split('`').step_by(2).collect()
}

/// Where the links of a page lead, with their lines.
fn links(page: &str) -> Vec<(usize, String)> {
    let mut links = Vec::new();
    for (at, line) in prose(page) {
        let line = without_code(&line);
        for rest in line.split("](").skip(1) {
            let target = rest
                .split_once(')')
                .unwrap_or_else(|| panic!("line {at}: a link without its end"))
                .0;
            links.push((at, target.to_owned()));
        }
    }
    links
}

/// What a link writes after `#` for each heading of a page.
fn anchors(page: &str) -> Vec<String> {
    let mut seen = BTreeMap::<String, usize>::new();
    let mut anchors = Vec::new();
    for (_, line) in prose(page) {
        let text = line.trim_start_matches('#');
        if text.len() == line.len() || !text.starts_with(' ') {
            continue;
        }
        let kept = text
            .trim()
            .chars()
            .filter(|letter| letter.is_alphanumeric() || matches!(letter, ' ' | '-' | '_'));
        let name = kept.collect::<String>().to_lowercase().replace(' ', "-");
        let earlier = seen.entry(name.clone()).or_insert(0);
        anchors.push(if *earlier == 0 {
            name
        } else {
            format!("{name}-{earlier}")
        });
        *earlier += 1;
    }
    anchors
}

/// The Markdown files of a folder and the folders in it.
fn pages_under(folder: &Path) -> Vec<PathBuf> {
    let mut pages = Vec::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder of pages") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "md") {
                pages.push(path);
            }
        }
    }
    pages.sort();
    pages
}

/// What is wrong with the links of one page.
fn broken_links(path: &Path) -> Vec<String> {
    let page = fs::read_to_string(path).expect("a page");
    let folder = path.parent().expect("a page stands in a folder");
    let mut broken = Vec::new();
    for (line, target) in links(&page) {
        if target.contains("://") || target.starts_with("mailto:") {
            continue;
        }
        let (file, anchor) = target.split_once('#').unwrap_or((&target, ""));
        let place = if file.is_empty() {
            path.to_owned()
        } else {
            folder.join(file)
        };
        if !place.exists() {
            broken.push(format!("{}:{line}: there is no `{target}`", path.display()));
        } else if !anchor.is_empty() {
            let other = fs::read_to_string(&place).expect("a linked page");
            if !anchors(&other).iter().any(|name| name == anchor) {
                broken.push(format!("{}:{line}: no heading for `{target}`", path.display()));
            }
        }
    }
    broken
}

#[test]
fn every_link_between_the_pages_leads_somewhere() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut pages: Vec<PathBuf> = PAGES.iter().map(|page| root.join(page)).collect();
    pages.extend(pages_under(&root.join("docs")));
    let broken: Vec<String> = pages.iter().flat_map(|page| broken_links(page)).collect();
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn a_link_to_nothing_is_found() {
    let folder = tempfile::tempdir().expect("an empty folder");
    let page = folder.path().join("page.md");
    let cases = [
        ("a file that is there", "[x](page.md)", 0),
        (
            "a heading that is there",
            "[x](#what-is-it-a-test)\n## What is it? A `test`",
            0,
        ),
        ("the second heading of one name", "[x](#one-1)\n# One\n# One", 0),
        ("another place", "[x](https://example.org/y)", 0),
        ("code", "`[x](nothing.md)`\n```text\n[x](nothing.md)\n```", 0),
        ("a file that is not there", "[x](nothing.md)", 1),
        (
            "a heading that is not there",
            "[x](page.md#nothing) and [y](#none)",
            2,
        ),
        ("a heading in a block is none", "[x](#one)\n```sh\n# One\n```", 1),
    ];
    for (name, text, count) in cases {
        fs::write(&page, text).expect("a page");
        assert_eq!(broken_links(&page).len(), count, "{name}");
    }
}
