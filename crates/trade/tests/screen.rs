//! Insect screens: how open they are. Each row names where its answer is known from.

#![expect(clippy::panic, reason = "these are tests")]

use astragal_exact::Number;
use astragal_trade::Fact;
use astragal_trade::screen::{MESH_MOST, Mesh};
use proptest::prelude::*;

fn mesh(across: &str, down: &str, strand: &str) -> Mesh {
    let number = |text: &str| Number::from_decimal(text).unwrap_or_else(|| panic!("{text}"));
    Mesh {
        across: number(across),
        down: number(down),
        strand: number(strand),
    }
}

/// Source: computed with a wire-cloth supplier's formula.
#[test]
fn a_screen_is_as_open_as_its_mesh_and_its_strand_leave_it() {
    let rows = [
        ("18", "16", "0.011", "66.1"),
        ("18", "14", "0.011", "67.8"),
        ("20", "20", "0.013", "54.8"),
        ("20", "20", "0.009", "67.2"),
    ];
    for (across, down, strand, percent) in rows {
        let open = mesh(across, down, strand).open_area().unwrap();
        assert_eq!(
            (open * Number::from(100)).to_fixed(1),
            percent,
            "{across} x {down}, {strand}"
        );
    }
}

/// Source: computed. A finer mesh of thinner strand is more open than a coarser one.
#[test]
fn the_mesh_count_alone_ranks_nothing() {
    let coarse = mesh("18", "16", "0.011").open_area().unwrap();
    let fine = mesh("20", "20", "0.009").open_area().unwrap();
    assert!(fine > coarse);
}

/// Source: computed, 25.4/mesh less the strand.
#[test]
fn gaps_are_in_millimetres_across_and_down() {
    let (across, down) = mesh("18", "16", "0.011").gaps_millimetres().unwrap();
    assert_eq!(
        (across.to_fixed(2), down.to_fixed(2)),
        ("1.13".to_owned(), "1.31".to_owned())
    );
}

#[test]
fn what_is_no_screen_is_refused() {
    let rows = [
        ("no wires across", mesh("0", "16", "0.011"), Fact::MeshCount),
        ("wires below nothing", mesh("18", "-16", "0.011"), Fact::MeshCount),
        ("finer than any", mesh("200.5", "16", "0.001"), Fact::MeshCount),
        ("no strand", mesh("18", "16", "0"), Fact::StrandDiameter),
        (
            "strand below nothing",
            mesh("18", "16", "-0.011"),
            Fact::StrandDiameter,
        ),
        (
            "strands that touch across",
            mesh("20", "16", "0.05"),
            Fact::StrandDiameter,
        ),
        (
            "strands that touch down",
            mesh("16", "20", "0.05"),
            Fact::StrandDiameter,
        ),
    ];
    for (name, mesh, fact) in rows {
        assert_eq!(mesh.open_area().map_err(|error| error.fact), Err(fact), "{name}");
        assert_eq!(
            mesh.gaps_millimetres().map_err(|error| error.fact),
            Err(fact),
            "{name}"
        );
    }
    assert!(mesh("20", "16", "0.0499").open_area().is_ok());
    assert!(mesh(&MESH_MOST.to_string(), "16", "0.0049").open_area().is_ok());
}

proptest! {
    /// A thicker strand in the same mesh leaves less; the share stays between 0 and 1.
    #[test]
    fn a_thicker_strand_leaves_less(across in 1_i64..=40, down in 1_i64..=40, ten_thousandths in 1_i64..240) {
        let of = |ten_thousandths| Mesh {
            across: Number::from(across),
            down: Number::from(down),
            strand: Number::ratio(ten_thousandths, 10_000).unwrap(),
        };
        let (thin, thick) = (of(ten_thousandths).open_area().unwrap(), of(ten_thousandths + 1).open_area().unwrap());
        prop_assert!(Number::ZERO < thick && thick < thin && thin < Number::ONE);
    }
}
