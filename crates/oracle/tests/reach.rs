//! The generator reaches everything that the differential test is meant to cover.
//!
//! Every expression node must have ended as known, unknown and undefined, unless it cannot; every kind of rule must
//! have been broken, without a row and undecided; and so on. A failure prints the whole table of counts.

use astragal_oracle::census::Census;
use astragal_oracle::compare::{filled, judged};
use astragal_oracle::generate::{Size, World};

const WORLDS: u64 = 1_500;
const CASES: u64 = 4;

/// Name before the colon, and what must have been met behind it.
const EXPECTED: &[(&str, &[&str])] = &[
    ("literal", &["known"]),
    ("read", ALL),
    ("property", ALL),
    ("is_asked", ALL),
    ("not", ALL),
    ("and", ALL),
    ("or", ALL),
    ("==", ALL),
    ("!=", ALL),
    ("<", ALL),
    ("<=", ALL),
    (">", ALL),
    (">=", ALL),
    ("in", ALL),
    ("add", ALL),
    ("negate", ALL),
    ("multiply", ALL),
    ("divide", ALL),
    ("conditional", ALL),
    ("min", ALL),
    ("max", ALL),
    ("abs", ALL),
    ("floor_to", ALL),
    ("ceil_to", ALL),
    ("round_to", ALL),
    ("in_inches", ALL),
    ("in_feet", ALL),
    ("in_mm", ALL),
    ("in_metres", ALL),
    ("in_in2", ALL),
    ("in_ft2", ALL),
    ("in_m2", ALL),
    ("united_inches_exact", ALL),
    ("united_inches_each_up", ALL),
    ("united_inches_sum_up", ALL),
    ("pounds_of_glass", ALL),
    ("structural_test_pressure", ALL),
    ("water_test_pressure", ALL),
    ("comparison with what is not asked", &["==", "!="]),
    (
        "conditional on what is unknown",
        &["neither side has a value", "a side has a value"],
    ),
    ("requirement", ALL),
    ("allowed rows", ALL),
    ("forbidden rows", ALL),
    ("rule cell *", ALL),
    (
        "rule cell that restricts what is not asked",
        &["allowed", "forbidden"],
    ),
    ("figure as a key", &["not asked"]),
    ("only", &["no row", "one row"]),
    ("first", &["no row", "one row", "several rows"]),
    ("least", &["no row", "one row", "several rows"]),
    ("greatest", &["no row", "one row", "several rows"]),
    ("standard of a later part", &["an earlier part is absent"]),
    (
        "option",
        &[
            "absent",
            "hidden",
            "not yet offered",
            "still offered",
            "honoured",
            "retired",
        ],
    ),
    ("what the plant determines", ALL),
    ("notice", ALL),
    (
        "percent of an item",
        &["absent", "of another part", "without a price"],
    ),
    ("quantity", &["below zero"]),
    (
        "item by options",
        &[
            "not asked",
            "open",
            "perhaps not asked, without an answer",
            "row",
            "no row",
        ],
    ),
    ("bracket", &["found", "beyond an end"]),
    ("sign-off", &["empty cell", "beyond an end"]),
    (
        "no price",
        &["empty cell", "beyond an end", "at or below the lower end"],
    ),
    ("money", &["exact", "rounded"]),
    ("money below zero", &["exact", "rounded"]),
    ("filled choice", &["open", "not asked", "picked", "standard"]),
    ("wild choice", &["open", "not asked", "picked", "standard"]),
    ("rule of the catalog", FAILING),
    ("rule of the policy", FAILING),
    ("rule applies", FAILING),
    ("rule offered", &["broken"]),
    ("rule determined", FAILING),
    ("rule has-a-price", &["broken", "no row"]),
    ("rule book-in-force", &["broken"]),
    ("standing binds", FAILING),
    ("standing warns", FAILING),
    ("standing sign-off", FAILING),
    ("standing waived", FAILING),
    ("standing not applied", FAILING),
    ("cause of no row", CAUSES),
    ("figure outcome", &["known", "unknown"]),
    ("figure outcome", CAUSES),
    ("part of a figure", &["exists", "absent", "unknown", "undefined"]),
    (
        "item standard",
        &["amount", "amount below zero", "unknown", "no price"],
    ),
    (
        "item upcharge",
        &["amount", "amount below zero", "unknown", "no price"],
    ),
    ("per part", &["attribute", "figure", "rule", "item", "notice"]),
    (
        "cell within",
        &["no ends", "upper end", "open below", "closed below"],
    ),
];
const ALL: &[&str] = &["known", "unknown", "undefined"];
const FAILING: &[&str] = &["broken", "no row", "undecided"];
const CAUSES: &[&str] = &[
    "no row",
    "not asked",
    "no property",
    "too large",
    "not covered",
    "ill typed",
];
const EXPECTED_ALONE: &[&str] = &[
    "standard ask",
    "standard option",
    "standard formula",
    "audience plant",
    "with a book",
    "without a book",
    "policy rounds",
    "policy without a unit",
    "effect block",
    "effect warn",
    "effect sign_off",
    "table without rows",
    "cell *",
    "cell one of",
    "total not priced",
    "total known",
    "total unknown",
    "total no price",
    "verdict holds",
    "verdict undecided",
    "verdict broken",
    "tail percent",
    "tail flat",
    "waivers used",
    "authorities not applied",
];

fn taken() -> Census {
    let mut census = Census::default();
    for seed in 0..WORLDS {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        census.world(&world);
        for count in 0..CASES {
            let case = world.case(count);
            let setting = world.setting(&case);
            let (_, from_picks) = filled(&setting, &case.picks);
            let unit = world.unit(count, &case, &from_picks);
            let (_, judgement, met) = judged(&setting, &unit);
            census.reading(&met);
            census.case(&case, &unit, &judgement);
        }
    }
    census
}

#[test]
fn the_generator_reaches_everything_that_is_to_be_compared() {
    let census = taken();
    let named = EXPECTED
        .iter()
        .flat_map(|(what, hows)| hows.iter().map(move |how| format!("{what}: {how}")));
    let alone = EXPECTED_ALONE.iter().map(|name| (*name).to_owned());
    let missing: Vec<String> = named
        .chain(alone)
        .filter(|name| census.counts.get(name).copied().unwrap_or(0) == 0)
        .collect();
    let table: Vec<String> = census
        .counts
        .iter()
        .map(|(name, count)| format!("{count:9} {name}"))
        .collect();
    assert!(
        missing.is_empty(),
        "never reached: {missing:#?}\n{}",
        table.join("\n")
    );
    if std::env::var_os("ASTRAGAL_SHOW_CENSUS").is_some() {
        println!("{}", table.join("\n"));
    }
}

/// Wild units include some that are longer or shorter than the catalog.
#[test]
fn units_of_another_length_are_made() {
    let (mut longer, mut shorter) = (0, 0);
    for seed in 0..WORLDS {
        let world = World::new(seed, Size::USUAL).expect("ranks prevent cycles");
        let case = world.case(0);
        let (_, from_picks) = filled(&world.setting(&case), &case.picks);
        let unit = world.unit(0, &case, &from_picks);
        let length = world.catalog.declarations().attributes.len();
        longer += usize::from(unit.choices.len() > length);
        shorter += usize::from(unit.choices.len() < length);
    }
    assert!(longer > 0 && shorter > 0, "{longer} longer, {shorter} shorter");
}
