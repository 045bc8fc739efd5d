//! Whether a buyer may cancel, in the program's answers: the total of a quote is before tax and order charges, so that it can be
//! enough for the federal rule and never too little.
//!
//! Source: 16 CFR 429.0(a), $25 at the buyer's home and $130 elsewhere (read); that the price is the total with all charges, 429.0,
//! from memory.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use std::fs;

use program::{json, run};

/// An order of one window at this price, sold there; the folder is kept by who asks.
fn order(folder: &tempfile::TempDir, price: &str, sold_at: &str) -> String {
    let put = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(&path, text).expect("a file");
        path.to_str().expect("a path").to_owned()
    };
    put(
        "tiny/library.toml",
        "format = 1\n[library]\nid = \"tiny\"\nlabel = \"Tiny\"\n",
    );
    put(
        "tiny/windows/catalog.toml",
        "format = 1\n[catalog]\nid = \"windows\"\nlabel = \"Windows\"\nlength = { unit = \"in\" }\n\
         [[attribute]]\nid = \"colour\"\nlabel = \"Colour\"\noptions = [{ id = \"white\", label = \"White\" }]\n\
         standard = \"white\"\n[[price]]\nid = \"base\"\nlabel = \"Base\"\n",
    );
    put(
        "tiny/book/book.toml",
        "format = 1\n[book]\nid = \"book\"\nlabel = \"Book\"\ncatalog = \"windows\"\ncurrency = \"USD\"\n\
         round_to = \"0.01\"\namounts = \"amounts.csv\"\n",
    );
    put("tiny/book/amounts.csv", &format!("item,amount\nbase,{price}\n"));
    put(
        "order.toml",
        &format!(
            "format = 1\n[order]\nid = \"o\"\nlabel = \"O\"\ndate = 2026-11-25\ncurrency = \"USD\"\n{sold_at}\
             signed = 2026-11-25\n[[catalog]]\nid = \"windows\"\nfolder = \"tiny/windows\"\nbook = \"tiny/book\"\n\
             [[opening]]\ntag = \"A\"\n[[opening.unit]]\ncatalog = \"windows\"\n"
        ),
    )
}

#[test]
fn a_total_is_enough_or_too_little_to_tell() {
    let (yes, no, unknown) = (Some(true), Some(false), None);
    let rows = [
        ("buyers-home", "24.99", unknown, &["price"][..]),
        ("buyers-home", "25.00", yes, &[]),
        ("elsewhere", "100.00", unknown, &["price"]),
        ("elsewhere", "129.99", unknown, &["price"]),
        ("elsewhere", "130.00", yes, &[]),
        ("sellers-premises", "100.00", no, &[]),
        ("sellers-premises", "9000.00", no, &[]),
        ("", "9000.00", unknown, &["place_of_sale"]),
        ("", "100.00", unknown, &["place_of_sale", "price"]),
    ];
    for (place, price, applies, missing) in rows {
        let folder = tempfile::tempdir().expect("a folder");
        let sold_at = match place {
            "" => String::new(),
            place => format!("sold_at = \"{place}\"\n"),
        };
        let answer = json(&["quote", &order(&folder, price, &sold_at), "--format", "json"]);
        let answer = &answer["cooling_off"];
        let words = answer["missing"].as_array().expect("what is missing").iter();
        let words: Vec<&str> = words.map(|word| word.as_str().expect("a word")).collect();
        assert_eq!(
            (answer["applies"].as_bool(), words.as_slice()),
            (applies, missing),
            "{place} {price}: {answer}"
        );
    }
}

#[test]
fn what_is_missing_is_said() {
    let said = |price: &str, place: &str| {
        let folder = tempfile::tempdir().expect("a folder");
        let ran = run(&[
            "quote",
            &order(&folder, price, &format!("sold_at = \"{place}\"\n")),
        ]);
        ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let elsewhere = said("100.00", "elsewhere");
    let waits = "Whether the buyer may cancel waits for: price of the sale with tax and all charges.";
    assert!(
        elsewhere.contains(waits) && !elsewhere.contains("is not for this sale"),
        "{elsewhere}"
    );
    let premises = said("100.00", "sellers-premises");
    assert!(
        premises.contains("by its place the federal cooling-off rule is not for this sale"),
        "{premises}"
    );
}
