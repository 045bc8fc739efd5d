//! The catalogs of an order, their books and policies.

use super::*;

fn check_head(old: &str, new: &str, expected: Expect) {
    assert!(HEAD.contains(old));
    check_whole(&format!("{}{OPENING}", HEAD.replace(old, new)), expected);
}

#[test]
fn a_catalog_lies_in_a_folder_of_a_library() {
    check_head(
        "library/hinged\"",
        "library/hingd\"",
        expect![[r#"
        8 "\"library/hingd\"" FOLDER_NOT_THERE there is no folder `library/hingd`
          help: look at the spelling; the path starts from the folder of the order
    "#]],
    );
    check_head(
        "library/hinged\"",
        "library/hinged/catalog.toml\"",
        expect![[r#"
        8 "\"library/hinged/catalog.toml\"" FILE_NOT_FOLDER `library/hinged/catalog.toml` is a file; expected a folder
          help: name the folder it is in
    "#]],
    );
    check_head(
        "library/hinged\"",
        "outside\"",
        expect![[r#"
        8 "\"outside\"" NO_LIBRARY `outside` is in no library: no folder above it holds `library.toml`
          help: put a `library.toml` with `format = 1` into the folder of the library
    "#]],
    );
    check_head(
        "library/hinged\"",
        "library/empty\"",
        expect![[r#"
        8 "\"library/empty\"" FILE_NOT_THERE folder `library/empty` holds no `catalog.toml`
          help: name the folder of the catalog
    "#]],
    );
    check_head(
        "library/hinged\"",
        "library/hinged-book\"",
        expect![[r#"
        8 "\"library/hinged-book\"" FILE_NOT_THERE folder `library/hinged-book` holds no `catalog.toml`
          help: it holds a price book; name the folder of the catalog
    "#]],
    );
}

#[test]
fn a_folder_is_named_from_the_order() {
    check_head(
        "library/hinged\"",
        "/library/hinged\"",
        expect![[r#"
        8 "\"/library/hinged\"" PATH_IS_ABSOLUTE `/library/hinged` is an absolute path; expected one relative to the order
          help: name the folder from the order, like `../library/hinged`
    "#]],
    );
    check_head(
        "library/hinged\"",
        "C:/hinged\"",
        expect![[r#"
        8 "\"C:/hinged\"" PATH_IS_ABSOLUTE `C:/hinged` is an absolute path; expected one relative to the order
          help: name the folder from the order, like `../library/hinged`
    "#]],
    );
    check_head(
        "\"library/hinged\"",
        "'library\\hinged'",
        expect![[r#"
        8 "'library\\hinged'" PATH_WITH_BACKSLASH `library\hinged` has a backslash
          help: write `/` between folders, on every system
    "#]],
    );
    check_head(
        "library/hinged\"",
        "\"",
        expect![[r#"
        8 "\"\"" PATH_IS_EMPTY no folder is named
          help: name the folder from the order, like `../library/hinged`
    "#]],
    );
    check_head(
        "library/hinged\"",
        "./other/../library/hinged\"",
        expect![[r#"
        no findings
    "#]],
    );
}

#[test]
fn a_catalog_names_folder_and_book() {
    check_whole(
        "format = 1\n[order]\nid = \"1\"\ndate = 2026-01-01\ncurrency = \"USD\"\n[[catalog]]\n",
        expect![[r#"
        6 "[[catalog]]" MISSING_KEY catalog lacks `book`
          help: add `book`
        6 "[[catalog]]" MISSING_KEY catalog lacks `folder`
          help: add `folder`
        6 "[[catalog]]" MISSING_KEY catalog lacks `id`
          help: add `id`
    "#]],
    );
}

#[test]
fn the_id_is_that_of_the_catalog_in_the_folder() {
    check_head(
        "library/hinged\"",
        "library/sliding\"",
        expect![[r#"
            7 "\"hinged\"" CATALOG_ID_DIFFERS folder `library/sliding` holds catalog `sliding`, not `hinged`
              help: write `id = "sliding"`, or name the folder of `hinged`
            9 "\"library/hinged-book\"" BOOK_FOR_OTHER_CATALOG price book `hinged-book` is for catalog `hinged`, not `sliding`
              help: name the folder of a price book for `sliding`
            10 "\"library/policy\"" POLICY_FOR_OTHER_CATALOG policy `north-street` is not for catalog `sliding`
              help: add `sliding` to `catalogs` of the policy, or leave `policy` out
        "#]],
    );
}

#[test]
fn a_catalog_is_named_once_and_used() {
    let again = "[[catalog]]\nid = \"hinged\"\nfolder = \"library/hinged\"\nbook = \"library/hinged-book\"\n";
    check(
        &format!("{again}{OPENING}"),
        expect![[r#"
        12 "\"hinged\"" DUPLICATE_ID two catalogs of the order have the id `hinged`
          7 "\"hinged\"": `hinged` stands here first
          help: keep one of the two
    "#]],
    );
    let unused =
        "[[catalog]]\nid = \"sliding\"\nfolder = \"library/sliding\"\nbook = \"library/sliding-book\"\n";
    check(
        &format!("{unused}{OPENING}"),
        expect![[r#"
        12 "\"sliding\"" warning CATALOG_NOT_USED no opening uses catalog `sliding`
          help: leave it out
    "#]],
    );
    assert_eq!(order_of(&format!("{unused}{OPENING}")).catalogs.len(), 2);
}

#[test]
fn book_and_policy_lie_in_the_library_of_the_catalog() {
    check_head(
        "library/hinged-book",
        "other/hinged-book",
        expect![[r#"
        9 "\"other/hinged-book\"" OTHER_LIBRARY price book `other/hinged-book` lies in another library than its catalog
          help: move it into the library of the catalog; both are read together
    "#]],
    );
    check_head(
        "library/policy",
        "other",
        expect![[r#"
        10 "\"other\"" OTHER_LIBRARY policy `other` lies in another library than its catalog
          help: move it into the library of the catalog; both are read together
    "#]],
    );
}

#[test]
fn a_book_is_for_the_catalog_and_in_the_currency_of_the_order() {
    check_head(
        "library/hinged-book",
        "library/sliding-book",
        expect![[r#"
            9 "\"library/sliding-book\"" BOOK_FOR_OTHER_CATALOG price book `sliding-book` is for catalog `sliding`, not `hinged`
              help: name the folder of a price book for `hinged`
        "#]],
    );
    check_head(
        "library/hinged-book",
        "library/canada-book",
        expect![[r#"
        9 "\"library/canada-book\"" CURRENCY_DIFFERS price book `canada-book` is in CAD; the order is in USD
          help: name a price book in USD; amounts are never converted
    "#]],
    );
    check_head(
        "library/hinged-book",
        "library/policy",
        expect![[r#"
        9 "\"library/policy\"" FILE_NOT_THERE folder `library/policy` holds no `book.toml`
          help: it holds a policy; name the folder of the price book
    "#]],
    );
    check_head(
        "library/hinged-book",
        "library/nowhere",
        expect![[r#"
        9 "\"library/nowhere\"" FOLDER_NOT_THERE there is no folder `library/nowhere`
          help: look at the spelling; the path starts from the folder of the order
    "#]],
    );
}

#[test]
fn a_policy_is_for_the_catalog() {
    let text = HEAD.replace("hinged", "sliding");
    check_whole(
        &format!("{text}{}", OPENING.replace("hinged", "sliding")),
        expect![[r#"
            10 "\"library/policy\"" POLICY_FOR_OTHER_CATALOG policy `north-street` is not for catalog `sliding`
              help: add `sliding` to `catalogs` of the policy, or leave `policy` out
        "#]],
    );
}

#[test]
fn a_policy_may_be_left_out() {
    check_head(
        "policy = \"library/policy\"\n",
        "",
        expect![[r#"
        no findings
    "#]],
    );
}

#[test]
fn a_policy_that_cannot_be_read_hides_no_waiver_and_adds_no_noise() {
    let waiver = "waivers = [ { rule = \"no-wide-ones\", reference = \"W\", from = 2026-01-01 } ]\n";
    let text = format!("{HEAD}{OPENING}{waiver}");
    check_whole(
        &text.replace("library/policy", "library/polcy"),
        expect![[r#"
        10 "\"library/polcy\"" FOLDER_NOT_THERE there is no folder `library/polcy`
          help: look at the spelling; the path starts from the folder of the order
    "#]],
    );
    check_whole(
        &text.replace("policy = \"library/policy\"\n", ""),
        expect![[r#"
        14 "\"no-wide-ones\"" UNKNOWN_RULE catalog `hinged` has no rule `no-wide-ones`
          help: waivable are `casement-width`
    "#]],
    );
}

#[test]
fn a_catalog_that_cannot_be_read_adds_no_noise_about_its_names() {
    let text = format!("{HEAD}[house]\nfacts = {{ year_built = 1964 }}\n{OPENING}");
    check_whole(
        &text.replace("library/hinged\"", "library/hingd\""),
        expect![[r#"
        8 "\"library/hingd\"" FOLDER_NOT_THERE there is no folder `library/hingd`
          help: look at the spelling; the path starts from the folder of the order
    "#]],
    );
}
