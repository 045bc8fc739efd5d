//! What is not covered is said where it applies, or where nobody knows that it does not.

use astragal_trade::not_covered::{Facts, Standing, Topic, not_covered};

/// No source: these are gaps of ours, and no value of theirs is known.
#[test]
fn a_topic_is_said_unless_it_is_known_not_to_matter() {
    let unknown = |region_has_it| Standing::NotKnown { region_has_it };
    let rows = [
        ("it applies", Standing::Applies, true),
        ("it does not", Standing::DoesNotApply, false),
        ("not known, the region has it", unknown(Some(true)), true),
        ("not known, the region has none", unknown(Some(false)), false),
        ("nothing known", unknown(None), true),
    ];
    let none = Facts {
        windborne_debris: Standing::DoesNotApply,
        wildfire: Standing::DoesNotApply,
        high_altitude: Standing::DoesNotApply,
        outswing_over_path: Standing::DoesNotApply,
    };
    assert_eq!(not_covered(&none), []);
    for (name, standing, is_said) in rows {
        let one_each = [
            (
                Topic::WindborneDebris,
                Facts {
                    windborne_debris: standing,
                    ..none
                },
            ),
            (
                Topic::Wildfire,
                Facts {
                    wildfire: standing,
                    ..none
                },
            ),
            (
                Topic::HighAltitude,
                Facts {
                    high_altitude: standing,
                    ..none
                },
            ),
            (
                Topic::OutswingOverPath,
                Facts {
                    outswing_over_path: standing,
                    ..none
                },
            ),
        ];
        for (topic, facts) in one_each {
            let expected = if is_said { vec![topic] } else { vec![] };
            assert_eq!(not_covered(&facts), expected, "{name}, {topic}");
        }
    }
}

#[test]
fn nothing_known_says_all_of_them_in_order() {
    assert_eq!(not_covered(&Facts::default()), Topic::ALL);
    for topic in Topic::ALL {
        assert!(topic.to_string().starts_with("not covered here: "));
    }
}
