//! Operations in the terms of IFC, by name.

use std::collections::BTreeSet;

use astragal_trade::operation_terms::{
    HandReading, Hinge, HingeSide, PanelOperation, PanelPosition, PanelTerm, TypePartitioning, UnitOperation,
    Viewer, WindowType,
};

const LEFT_OUTSIDE: Hinge = Hinge {
    side: HingeSide::Left,
    seen_from: Viewer::Outside,
};
const RIGHT_OUTSIDE: Hinge = Hinge {
    side: HingeSide::Right,
    seen_from: Viewer::Outside,
};
const LEFT_INSIDE: Hinge = Hinge {
    side: HingeSide::Left,
    seen_from: Viewer::Inside,
};

fn terms(operation: UnitOperation, reading: Option<HandReading>) -> String {
    let panels = operation.panels(reading);
    let words = panels.iter().map(|panel| {
        let operation = match panel.operation {
            PanelTerm::Named(operation) => operation.literal().to_owned(),
            PanelTerm::EitherHand(left, right) => format!("{} or {}", left.literal(), right.literal()),
        };
        match panel.position {
            Some(position) => format!("{operation} at {}", position.literal()),
            None => operation,
        }
    });
    words.collect::<Vec<_>>().join(", ")
}

/// Source: names of the IFC enumerations, read, and compared with the schemas in `outside`; which operation is which, our mapping.
#[test]
fn each_operation_has_its_panels() {
    let rows = [
        (
            UnitOperation::Casement(LEFT_OUTSIDE),
            "SIDEHUNGLEFTHAND or SIDEHUNGRIGHTHAND",
        ),
        (
            UnitOperation::TiltTurn(LEFT_OUTSIDE),
            "TILTANDTURNLEFTHAND or TILTANDTURNRIGHTHAND",
        ),
        (UnitOperation::Awning, "TOPHUNG"),
        (UnitOperation::Hopper, "BOTTOMHUNG"),
        (
            UnitOperation::SingleHung,
            "FIXEDCASEMENT at TOP, SLIDINGVERTICAL at BOTTOM",
        ),
        (
            UnitOperation::DoubleHung,
            "SLIDINGVERTICAL at TOP, SLIDINGVERTICAL at BOTTOM",
        ),
        (UnitOperation::Slider, "SLIDINGHORIZONTAL, FIXEDCASEMENT"),
        (UnitOperation::Fixed, "FIXEDCASEMENT"),
    ];
    for (operation, expected) in rows {
        assert_eq!(
            terms(operation, None),
            expected,
            "{operation:?} (IFC 4.3, our own reading)"
        );
        let panels = operation.panels(None).len();
        let single = operation.partitioning() == Some(TypePartitioning::SinglePanel);
        assert_eq!(single, panels == 1, "{operation:?}");
    }
}

/// A hand is given only with a reading, and the reading may be said from either side of the wall.
#[test]
fn a_hand_is_what_the_caller_says_it_is() {
    let right_means = |right_hand| Some(HandReading { right_hand });
    let rows = [
        (
            "right is right outside, hinged right",
            RIGHT_OUTSIDE,
            right_means(RIGHT_OUTSIDE),
            "RIGHTHAND",
        ),
        (
            "right is right outside, hinged left",
            LEFT_OUTSIDE,
            right_means(RIGHT_OUTSIDE),
            "LEFTHAND",
        ),
        (
            "right is left outside, hinged left",
            LEFT_OUTSIDE,
            right_means(LEFT_OUTSIDE),
            "RIGHTHAND",
        ),
        (
            "right is left outside, hinged right",
            RIGHT_OUTSIDE,
            right_means(LEFT_OUTSIDE),
            "LEFTHAND",
        ),
        (
            "left inside is right outside",
            LEFT_INSIDE,
            right_means(RIGHT_OUTSIDE),
            "RIGHTHAND",
        ),
        (
            "a reading from inside",
            RIGHT_OUTSIDE,
            right_means(LEFT_INSIDE),
            "RIGHTHAND",
        ),
        (
            "both from inside",
            LEFT_INSIDE,
            right_means(LEFT_INSIDE),
            "RIGHTHAND",
        ),
    ];
    for (name, hinge, reading, hand) in rows {
        assert_eq!(
            terms(UnitOperation::Casement(hinge), reading),
            format!("SIDEHUNG{hand}"),
            "{name}"
        );
        assert_eq!(
            terms(UnitOperation::TiltTurn(hinge), reading),
            format!("TILTANDTURN{hand}"),
            "{name}"
        );
    }
}

#[test]
fn every_term_has_a_literal_of_its_own_and_is_found_by_it() {
    macro_rules! check {
        ($($enumeration:ty, $count:literal;)+) => {$(
            let literals: BTreeSet<&str> = <$enumeration>::ALL.iter().map(|term| term.literal()).collect();
            assert_eq!((literals.len(), <$enumeration>::ALL.len()), ($count, $count), "{}", <$enumeration>::ENUMERATION);
            for term in <$enumeration>::ALL {
                assert_eq!(<$enumeration>::from_literal(term.literal()), Some(*term));
            }
            for other in ["", "window", "SIDEHUNG", " NOTDEFINED"] {
                assert_eq!(<$enumeration>::from_literal(other), None, "{other}");
            }
        )+};
    }
    check! {
        PanelOperation, 14;
        PanelPosition, 6;
        TypePartitioning, 11;
        WindowType, 5;
    }
    let top = PanelPosition::from_literal("TOP").unwrap();
    assert_eq!(top, PanelPosition::Top);
}
