//! One helper: a library in, findings and what is there out.

mod deep;
mod drawings;
mod examples;
mod explained;
mod library;

use std::fmt::Write as _;

use expect_test::{Expect, expect};

use super::*;
use crate::load::tests::{lines_of, write};

fn catalog(id: &str, rest: &str) -> String {
    format!(
        "format = 1\n[catalog]\nid = \"{id}\"\nlabel = \"C\"\nlength = {{ unit = \"in\" }}\n[[attribute]]\nid = \"exterior\"\nlabel = \"Exterior\"\noptions = [{{ id = \"white\" }}, {{ id = \"grey\" }}]\nstandard = \"white\"\n[[site_fact]]\nid = \"wet\"\nlabel = \"Wet place\"\nof = \"room\"\ntype = \"bool\"\n[[rule]]\nid = \"no-grey\"\nrequire = 'exterior != \"grey\"'\nmessage = \"{{exterior}} is not made.\"\n[[price]]\nid = \"base\"\nlabel = \"Base\"\n{rest}"
    )
}

const GREY: &str = "[[example]]\nid = \"grey\"\npicks = [{ attribute = \"exterior\", option = \"grey\" }]\ndate = 2026-11-25\nbreaks = [\"no-grey\"]\n";

fn book(catalog: &str) -> String {
    format!(
        "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"{catalog}\"\ncurrency = \"USD\"\nround_to = \"0.01\"\namounts = \"amounts.csv\"\n"
    )
}

const AMOUNTS: &str = "item,amount\nbase,450.00\n";

const POLICY: &str = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"c\"]\n";

fn report(files: &[(&str, &str)], at: &str) -> CheckReport {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), files);
    check_library(&folder.path().join(at))
}

fn check(files: &[(&str, &str)], at: &str, expected: Expect) {
    let report = report(files, at);
    let mut out = lines_of(&report.findings, &report.sources);
    for it in &report.summary.catalogs {
        writeln!(out, "catalog {} in {}: {:?}", it.id, it.folder, it.counts).unwrap();
    }
    for it in &report.summary.books {
        writeln!(
            out,
            "book {} in {} for {} in {}",
            it.id, it.folder, it.catalog, it.currency
        )
        .unwrap();
    }
    for it in &report.summary.policies {
        let catalogs: Vec<&str> = it.revisions.iter().map(|(id, _)| id.as_str()).collect();
        writeln!(
            out,
            "policy {} in {} for {}",
            it.id,
            it.folder,
            catalogs.join(" ")
        )
        .unwrap();
    }
    expected.assert_eq(&out);
}

fn library(rest: &str) -> Vec<(String, String)> {
    let own = |path: &str, text: String| (path.to_owned(), text);
    vec![
        own("c/catalog.toml", catalog("c", rest)),
        own("books/b/book.toml", book("c")),
        own("books/b/amounts.csv", AMOUNTS.to_owned()),
        own("p/policy.toml", POLICY.to_owned()),
    ]
}

fn check_with(rest: &str, expected: Expect) {
    let files = library(rest);
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    check(&files, "", expected);
}
