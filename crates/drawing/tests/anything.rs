//! Whatever can be drawn is drawn within the picture, and no text lies on the unit or on another text.

#![expect(clippy::unwrap_used, reason = "these are tests")]

mod reading;

use astragal_drawing::{
    Along, Arrangement, Dimension, Divider, Elevation, Frame, Glass, Grille, GrillePattern, Operation, Panel,
    Screen, Side, Swing, check_elevation, elevation_svg,
};
use astragal_exact::{LengthUnit, Number};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use reading::{area, covered, lines, overlap, parts, view, white, within};
use roxmltree::Document;

const TEXTS: [&str; 7] = [
    "tag",
    "size",
    "title",
    "dimension",
    "description",
    "viewed",
    "legend",
];
const ON_GLASS: [&str; 11] = [
    "fixed",
    "tempered",
    "mark-plate",
    "screen-word",
    "screen",
    "screen-mesh",
    "obscure",
    "hinge",
    "arrow-shaft",
    "arrow-head",
    "glass-edge",
];

/// A fraction of a length, exact.
fn part_of(length: &Number, of: i64, whole: i64) -> Number {
    (length * Number::from(of))
        .checked_div(&Number::from(whole))
        .unwrap()
}

fn least(one: &Number, other: &Number) -> Number {
    one.min(other).clone()
}

fn side() -> impl Strategy<Value = Side> {
    prop_oneof![
        Just(Side::Left),
        Just(Side::Right),
        Just(Side::Top),
        Just(Side::Bottom)
    ]
}

fn operation() -> impl Strategy<Value = Operation> {
    let hinged = (side(), any::<bool>()).prop_map(|(side, out)| {
        let swing = if out { Swing::Out } else { Swing::In };
        Operation::Hinged { side, swing }
    });
    prop_oneof![Just(Operation::Fixed), hinged, side().prop_map(Operation::Slides)]
}

/// A panel whose sash and bars are fractions of `size`, the smaller side of the smallest panel.
fn panel(size: Number) -> impl Strategy<Value = Panel> {
    let grille = option::of((1_u32..6, 1_u32..6, any::<bool>()));
    let looks = (
        any::<bool>(),
        any::<bool>(),
        option::of(any::<bool>()),
        option::of(side()),
    );
    (operation(), option::of(1_i64..8), grille, looks).prop_map(move |(operation, sash, grille, looks)| {
        let (obscure, tempered, screen, handle) = looks;
        let bar = part_of(&size, 1, 40);
        let grille = grille.map(|(columns, rows, colonial)| {
            let pattern = if colonial {
                GrillePattern::Colonial { columns, rows }
            } else {
                GrillePattern::Prairie {
                    inset: part_of(&size, 1, 10),
                }
            };
            Grille {
                pattern,
                bar: bar.clone(),
                colour: white(),
            }
        });
        Panel {
            operation,
            sash: sash.map(|sash| part_of(&size, sash, 40)),
            grille,
            glass: if obscure { Glass::Obscure } else { Glass::Clear },
            tempered,
            screen: screen.map(|outside| if outside { Screen::Outside } else { Screen::Inside }),
            handle,
        }
    })
}

fn dimension(width: Number, height: Number) -> impl Strategy<Value = Dimension> {
    let label = prop_oneof![
        Just(""),
        Just("meeting rail"),
        Just("from the sill to the meeting rail"),
        Just("mullion")
    ];
    (any::<bool>(), 0_i64..16, 1_i64..16, label).prop_map(move |(across, from, run, label)| {
        let (along, length) = if across {
            (Along::Width, &width)
        } else {
            (Along::Height, &height)
        };
        let to = (from + run).min(16);
        Dimension {
            along,
            from: part_of(length, from, 16),
            to: part_of(length, to, 16),
            label: label.to_owned(),
        }
    })
}

fn elevation() -> impl Strategy<Value = Elevation> {
    let size = prop_oneof![16_i64..9_600, 16_i64..1_600, 320_i64..1_600];
    (size.clone(), size, 1_i64..=12, any::<bool>(), 0_i64..10).prop_flat_map(
        |(width, height, count, stacked, face)| {
            let (width, height) = (
                part_of(&Number::ONE, width, 16),
                part_of(&Number::ONE, height, 16),
            );
            let frame = part_of(&least(&width, &height), face, 40);
            let opening = (&width - &frame - &frame, &height - &frame - &frame);
            let each = if stacked {
                part_of(&opening.1, 1, count)
            } else {
                part_of(&opening.0, 1, count)
            };
            let smallest = if stacked {
                least(&opening.0, &each)
            } else {
                least(&opening.1, &each)
            };
            let panels = vec(panel(smallest), usize::try_from(count).unwrap());
            let dimensions = vec(dimension(width.clone(), height.clone()), 0..6);
            let metric = any::<bool>();
            (panels, dimensions, metric).prop_map(move |(mut panels, dimensions, metric)| {
                let bar = part_of(&each, 1, 20);
                let divider = |number: i64| Divider {
                    at: &frame + &each * Number::from(number),
                    bar: bar.clone(),
                };
                let dividers: Vec<Divider> = (1..count).map(divider).collect();
                let arrangement = match (count, stacked) {
                    (1, _) => Arrangement::One(panels.remove(0)),
                    (_, true) => Arrangement::Stacked { panels, dividers },
                    (_, false) => Arrangement::SideBySide { panels, dividers },
                };
                let unit = if metric {
                    LengthUnit::Millimetre
                } else {
                    LengthUnit::Inch
                };
                let frame = Frame {
                    face: frame.clone(),
                    colour: white(),
                };
                let mut elevation = Elevation::new(width.clone(), height.clone(), unit, frame);
                elevation.arrangement = arrangement;
                elevation.dimensions = dimensions;
                elevation.tag = "K12".to_owned();
                elevation.title =
                    vec!["Kitchen, over the sink, north side of the house, beside the back door".to_owned()];
                elevation
            })
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn everything_is_within_the_picture_and_no_text_lies_on_the_unit_or_on_another(elevation in elevation()) {
        let text = elevation_svg(&elevation).unwrap_or_else(|error| panic!("{error}"));
        let document = Document::parse(&text).unwrap();
        let view = view(&document);
        for node in document.descendants().filter(|node| node.attribute("data-part").is_some()) {
            if let Some(covered) = covered(&node) {
                prop_assert!(within(covered, view), "{node:?} covers {covered:?} of {view:?}\n{text}");
            }
        }
        let frame = area(&parts(&document, "frame")[0]);
        let texts: Vec<_> = TEXTS.iter().flat_map(|part| parts(&document, part)).collect();
        let areas: Vec<_> = texts.iter().filter_map(covered).collect();
        for (position, one) in areas.iter().enumerate() {
            prop_assert!(!overlap(*one, frame), "{:?} lies on the unit\n{text}", texts[position]);
            for (other_position, other) in areas.iter().enumerate().skip(position + 1) {
                let (first, second) = (&texts[position], &texts[other_position]);
                prop_assert!(!overlap(*one, *other), "{first:?} lies on {second:?}\n{text}");
            }
        }
    }

    #[test]
    fn what_is_drawn_on_glass_stays_on_glass(elevation in elevation()) {
        let text = elevation_svg(&elevation).unwrap_or_else(|error| panic!("{error}"));
        let document = Document::parse(&text).unwrap();
        let glasses: Vec<_> = parts(&document, "glass").iter().map(area).collect();
        prop_assert_eq!(glasses.len(), elevation.arrangement.panels().len());
        for node in ON_GLASS.iter().flat_map(|part| parts(&document, part)) {
            if let Some(covered) = covered(&node) {
                let on_one = glasses.iter().any(|glass| within(covered, *glass));
                prop_assert!(on_one, "{node:?} covers {covered:?}\n{text}");
            }
        }
        let words: Vec<_> = parts(&document, "screen-word").iter().filter_map(covered).collect();
        for line in parts(&document, "hinge").iter().flat_map(lines) {
            let ((x, y), (to_x, to_y)) = (line[0], line[1]);
            for step in 0..=200 {
                let (x, y) = (x + (to_x - x) * step / 200, y + (to_y - y) * step / 200);
                let on_word = words.iter().any(|word| overlap((x, y, x + 1, y + 1), *word));
                prop_assert!(!on_word, "a hinge line crosses the word at {x} {y}\n{text}");
            }
        }
        let marks = ["arrow-shaft", "arrow-head", "fixed", "tempered", "screen-word"];
        let marks: Vec<_> = marks.iter().flat_map(|part| parts(&document, part)).collect();
        for (position, one) in marks.iter().enumerate() {
            for other in marks.iter().skip(position + 1).filter(|node| node.tag_name().name() == "text") {
                let both = covered(one).zip(covered(other));
                prop_assert!(both.is_none_or(|(one, other)| !overlap(one, other)), "{one:?} {other:?}\n{text}");
            }
        }
        let frame = area(&parts(&document, "frame")[0]);
        for node in ["sash", "glass"].iter().flat_map(|part| parts(&document, part)) {
            prop_assert!(within(area(&node), frame));
        }
    }

    #[test]
    fn any_lengths_and_texts_are_drawn_or_refused(
        lengths in vec((any::<i64>(), any::<i64>()), 6),
        texts in vec(any::<String>(), 3),
        counts in (0_u32..30, 0_u32..30),
    ) {
        let lengths: Vec<Number> =
            lengths.iter().map(|(above, below)| Number::ratio(*above, *below % 4_096).unwrap_or_default()).collect();
        let mut panel = Panel { sash: Some(lengths[0].clone()), ..Panel::new(Operation::Fixed) };
        let pattern = GrillePattern::Colonial { columns: counts.0, rows: counts.1 };
        let mut colour = white();
        colour.name.clone_from(&texts[0]);
        panel.grille = Some(Grille { pattern, bar: lengths[1].clone(), colour: colour.clone() });
        let frame = Frame { face: lengths[2].clone(), colour };
        let mut unit = Elevation::new(lengths[3].clone(), Number::from(40), LengthUnit::Foot, frame);
        let divider = Divider { at: lengths[4].clone(), bar: lengths[5].clone() };
        unit.arrangement =
            Arrangement::SideBySide { panels: vec![panel, Panel::new(Operation::Fixed)], dividers: vec![divider] };
        unit.tag.clone_from(&texts[1]);
        unit.title = vec![texts[2].clone()];
        match elevation_svg(&unit) {
            Ok(text) => prop_assert!(Document::parse(&text).is_ok(), "{text}"),
            Err(error) => {
                prop_assert!(!error.to_string().is_empty());
                prop_assert_eq!(check_elevation(&unit), Err(error));
            }
        }
    }

    #[test]
    fn any_text_gives_well_formed_xml_that_says_it(text in "\\PC{0,40}") {
        let mut unit = reading::one("28", "45", Panel::new(Operation::Fixed));
        unit.tag.clone_from(&text);
        unit.title = vec![text.clone()];
        unit.frame.colour.name.clone_from(&text);
        let drawn = elevation_svg(&unit).unwrap_or_else(|error| panic!("{error}"));
        let document = Document::parse(&drawn).unwrap();
        let said: String = parts(&document, "title").iter().filter_map(|node| node.text()).collect();
        let letters = |text: &str| text.split_whitespace().collect::<String>();
        prop_assert_eq!(letters(&said), letters(&text));
    }
}
