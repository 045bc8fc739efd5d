//! Each hazardous location: the limit, one step under, one step over, and each fact missing.

use super::text_rows::rows;
use super::{ask, at};
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::Location;

const IRC: [Edition; 3] = [Edition::Irc2018, Edition::Irc2021, Edition::Irc2024];
const IBC: [Edition; 2] = [Edition::Ibc2018, Edition::Ibc2021];

fn check(location: Location, editions: &[Edition], table: &'static str) {
    for row in rows(table) {
        let [name, facts, expected] = row[..] else {
            panic!("{row:?}");
        };
        for edition in editions {
            let answer = ask(*edition, facts);
            assert_eq!(at(&answer, location), expected, "{name}, {edition}");
            // Nothing else of the harmless site calls for it, unless the row says so.
            let others = answer.calling_for_it().filter(|found| found.location != location);
            assert_eq!(others.count(), 0, "{name}, {edition}");
        }
    }
}

/// IRC 2015 R308.4.3 and IRC 2024 R324.4.3 as quoted, IBC 2406.4.3 in a state's article. The first four rows are computed.
const LARGE_PANE: &str = "
    row                                | facts                                      | answer
    36 x 36 in is exactly 9 sq ft      | area 1296; bottom 17; top 53; walk 36      | no
    36 x 36 1/16 in                    | area 1298.25; bottom 17; top 53; walk 36   | yes
    bottom edge of 18                  | area 1298.25; bottom 18; top 54; walk 36   | no
    top edge of 36                     | area 1298.25; bottom 0; top 36; walk 36    | no
    walking surface at 36              | area 1297; bottom 17; top 53; walk 36      | yes
    a hair above 9 sq ft               | area 1296.001; bottom 17; top 53; walk 36  | yes
    just under 9 sq ft                 | area 1295.9; bottom 17; top 53; walk 36    | no
    bottom one sixteenth under         | area 1297; bottom 287/16; top 53; walk 36  | yes
    bottom one sixteenth over          | area 1297; bottom 289/16; top 53; walk 36  | no
    top one sixteenth over             | area 1297; bottom 0; top 577/16; walk 36   | yes
    top one sixteenth under            | area 1297; bottom 0; top 575/16; walk 36   | no
    walking surface one sixteenth over | area 1297; bottom 17; top 53; walk 577/16  | no
    walking surface one sixteenth under | area 1297; bottom 17; top 53; walk 575/16 | yes
    area not known                     | area ?; bottom 17; top 53; walk 36         | open: lite_area
    edge not known                     | area 1297; bottom ?; top 53; walk 36       | open: exposed_glass_edge
    top not known                      | area 1297; bottom 17; top ?; walk 36       | open: glass_top_edge
    walking surface not known          | area 1297; bottom 17; top 53; walk ?       | open: walking_surface_distance
    nothing known                      | area ?; bottom ?; top ?; walk ?            | open: exposed_glass_edge, lite_area, glass_top_edge, walking_surface_distance
    a small lite, nothing else known   | area 1296; bottom ?; top ?; walk ?         | no
    a high edge, nothing else known    | area ?; bottom 18; top ?; walk ?           | no
";

#[test]
fn a_large_pane_meets_all_four_conditions() {
    check(Location::LargePane, &IRC, LARGE_PANE);
    check(Location::LargePane, &IBC, LARGE_PANE);
}

/// IRC 2015 R308.4.2 and IRC 2024 R324.4.2 as quoted; for the IBC the same, from memory.
const BESIDE_DOOR: &str = "
    row                               | facts                                               | answer
    in the plane, at 24               | bottom 59; wall in plane; door 24                   | yes
    in the plane, one sixteenth over  | bottom 59; wall in plane; door 385/16               | no
    in the plane, one sixteenth under | bottom 59; wall in plane; door 383/16               | yes
    edge of 60                        | bottom 60; wall in plane; door 24                   | no
    edge one sixteenth under          | bottom 959/16; wall in plane; door 24               | yes
    edge one sixteenth over           | bottom 961/16; wall in plane; door 24               | no
    perpendicular, hinge side         | bottom 59; wall perpendicular; door 24; hinge yes   | yes
    perpendicular, at 24 1/16         | bottom 59; wall perpendicular; door 385/16; hinge yes | no
    perpendicular, latch side         | bottom 59; wall perpendicular; door 10; hinge no    | no
    at 180 degrees or more            | bottom 59; wall beyond; door 10; hinge yes          | no
    no door                           | bottom 59; wall no door; door ?; hinge ?            | no
    in the plane, hinge not known     | bottom 59; wall in plane; door 24; hinge ?          | yes
    perpendicular, hinge not known    | bottom 59; wall perpendicular; door 24; hinge ?     | open: hinge_side_of_inswinging_door
    distance not known                | bottom 59; wall in plane; door ?                    | open: door_distance
    wall not known, hinge side        | bottom 59; wall ?; door 24; hinge yes               | open: door_wall
    wall not known, latch side        | bottom 59; wall ?; door 24; hinge no                | open: door_wall
    nothing known of a door           | bottom 59; wall ?; door ?; hinge ?                  | open: door_distance, door_wall, hinge_side_of_inswinging_door
    edge not known                    | bottom ?; top ?; area 1; wall in plane; door 24     | open: exposed_glass_edge
    edge high, nothing else known     | bottom 60; wall ?; door ?; hinge ?                  | no
    far, nothing else known           | bottom 59; wall ?; door 25; hinge ?                 | no
";

#[test]
fn glass_beside_a_door_is_asked_by_edge_distance_and_wall() {
    check(Location::BesideDoor, &IRC, BESIDE_DOOR);
    check(Location::BesideDoor, &IBC, BESIDE_DOOR);
}

/// The text of 2015 says a perpendicular wall, that of 2024 a wall at less than 180 degrees; those between were not seen.
#[test]
fn a_wall_at_an_angle_counts_by_2024_and_is_open_where_the_words_were_not_seen() {
    let facts = "bottom 59; wall angled; door 24; hinge yes";
    for (edition, expected) in [
        (Edition::Irc2018, "open: wording_in_force"),
        (Edition::Irc2021, "open: wording_in_force"),
        (Edition::Irc2024, "yes"),
        (Edition::Ibc2018, "open: wording_in_force"),
        (Edition::Ibc2021, "open: wording_in_force"),
    ] {
        assert_eq!(
            at(&ask(edition, facts), Location::BesideDoor),
            expected,
            "{edition}"
        );
        let latch = facts.replace("hinge yes", "hinge no");
        assert_eq!(at(&ask(edition, &latch), Location::BesideDoor), "no", "{edition}");
    }
}

/// Trade press of 2020 on R308.4.5: below 60 in above the standing surface, excused more than 60 in from the water's edge.
const WET: &str = "
    row                          | facts                                      | answer
    a tub                        | wet tub; wet_edge 59; water 0              | yes
    a shower                     | wet shower; wet_edge 59; water 0           | yes
    a spa                        | wet spa; wet_edge 59; water 0              | yes
    a sauna                      | wet sauna; wet_edge 59; water 0            | yes
    a pool                       | wet pool; wet_edge 59; water 0             | yes
    a kitchen sink is none       | wet none; wet_edge 10; water 0             | no
    edge of 60                   | wet tub; wet_edge 60; water 0              | no
    edge one sixteenth under     | wet tub; wet_edge 959/16; water 0          | yes
    edge one sixteenth over      | wet tub; wet_edge 961/16; water 0          | no
    exactly 60 from the water    | wet tub; wet_edge 30; water 60             | yes
    one sixteenth over           | wet tub; wet_edge 30; water 961/16         | no
    one sixteenth under          | wet tub; wet_edge 30; water 959/16         | yes
    glass below the tub's floor  | wet tub; wet_edge -4; water 0              | yes
    place not known              | wet ?; wet_edge 30; water 10               | open: wet_place
    edge not known               | wet tub; wet_edge ?; water 10              | open: edge_above_wet_surface
    distance not known           | wet tub; wet_edge 30; water ?              | open: water_edge_distance
    far, nothing else known      | wet ?; wet_edge ?; water 61                | no
    the floor's edge is another  | bottom 70; top 90; wet tub; wet_edge 55; water 0 | yes
";

#[test]
fn glass_by_water_is_asked_by_the_edge_above_where_one_stands() {
    check(Location::WetPlace, &IRC, WET);
    check(Location::WetPlace, &IBC, WET);
}

/// IBC 2406.4.6 as quoted: below 60 in, excused 36 in or more away. IRC R308.4.6, below 36 in: from memory.
const STAIRS: &str = "
    row                       | facts                                    | IRC  | IBC
    on the stair              | stair yes; stair_edge 30; stair_far 0    | yes  | yes
    edge of 36                | stair yes; stair_edge 36; stair_far 0    | no   | yes
    one sixteenth under 36    | stair yes; stair_edge 575/16; stair_far 0 | yes | yes
    one sixteenth over 36     | stair yes; stair_edge 577/16; stair_far 0 | no  | yes
    edge of 60                | stair yes; stair_edge 60; stair_far 0    | no   | no
    one sixteenth under 60    | stair yes; stair_edge 959/16; stair_far 0 | no  | yes
    one sixteenth over 60     | stair yes; stair_edge 961/16; stair_far 0 | no  | no
    36 away                   | stair yes; stair_edge 30; stair_far 36   | no   | no
    one sixteenth nearer      | stair yes; stair_edge 30; stair_far 575/16 | yes | yes
    one sixteenth further     | stair yes; stair_edge 30; stair_far 577/16 | no | no
    glass below the tread     | stair yes; stair_edge -10; stair_far 0   | yes  | yes
    no stair                  | stair no; stair_edge 0; stair_far 0      | no   | no
    not known if there is one | stair ?; stair_edge 30; stair_far 0      | open: beside_stair | open: beside_stair
    edge not known            | stair yes; stair_edge ?; stair_far 0     | open: edge_above_stair | open: edge_above_stair
    distance not known        | stair yes; stair_edge 30; stair_far ?    | open: stair_distance | open: stair_distance
    far, nothing else known   | stair ?; stair_edge ?; stair_far 36      | no   | no
";

#[test]
fn glass_beside_a_stair_is_asked_lower_by_the_irc_than_by_the_ibc() {
    for row in rows(STAIRS) {
        let [name, facts, by_irc, by_ibc] = row[..] else {
            panic!("{row:?}");
        };
        for edition in IRC {
            assert_eq!(
                at(&ask(edition, facts), Location::Stair),
                by_irc,
                "{name}, {edition}"
            );
        }
        for edition in IBC {
            assert_eq!(
                at(&ask(edition, facts), Location::Stair),
                by_ibc,
                "{name}, {edition}"
            );
        }
    }
}

/// IBC 2406.4.7 and IRC 2012 R308.4.7 as quoted: below 36 in above the landing and within 60 in of the bottom tread.
const LANDING: &str = "
    row                       | facts                                      | answer
    at the tread              | landing yes; landing_edge 30; tread 0      | yes
    edge of 36                | landing yes; landing_edge 36; tread 0      | no
    edge one sixteenth under  | landing yes; landing_edge 575/16; tread 0  | yes
    edge one sixteenth over   | landing yes; landing_edge 577/16; tread 0  | no
    tread at 60               | landing yes; landing_edge 30; tread 60     | yes
    tread one sixteenth over  | landing yes; landing_edge 30; tread 961/16 | no
    tread one sixteenth under | landing yes; landing_edge 30; tread 959/16 | yes
    no landing                | landing no; landing_edge 0; tread 0        | no
    not known if there is one | landing ?; landing_edge 30; tread 0        | open: bottom_stair_landing
    edge not known            | landing yes; landing_edge ?; tread 0       | open: edge_above_landing
    tread not known           | landing yes; landing_edge 30; tread ?      | open: bottom_tread_distance
";

#[test]
fn glass_at_a_bottom_landing_is_asked_by_edge_and_tread() {
    check(Location::BottomLanding, &IRC, LANDING);
    check(Location::BottomLanding, &IBC, LANDING);
}

/// IRC 2015 R308.4.1 as quoted.
const DOORS: &str = "
    row       | facts       | answer
    in a door | in_door yes | yes
    not       | in_door no  | no
    not known | in_door ?   | open: in_door
";

/// IRC 2024 R324.4.4 as transcribed: any area, any height.
const GUARDS: &str = "
    row         | facts                      | answer
    in a guard  | guard yes                  | yes
    tiny, high  | guard yes; area 1; bottom 90; top 91 | yes
    not         | guard no                   | no
    not known   | guard ?                    | open: in_guard
";

#[test]
fn glass_in_doors_and_guards_is_asked_whatever_its_size() {
    check(Location::InDoor, &IRC, DOORS);
    check(Location::InDoor, &IBC, DOORS);
    check(Location::Guard, &IRC, GUARDS);
    check(Location::Guard, &IBC, GUARDS);
}
