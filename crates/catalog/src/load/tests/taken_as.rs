//! Measures and facts that are worked out from raw readings.

use super::*;

#[test]
fn a_length_may_be_taken_from_readings() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\ntaken_as = \"width\"\n\
         [[measure]]\nid = \"height\"\nlabel = \"H\"\ntaken_as = \"height\"\n\
         [[site_fact]]\nid = \"askew\"\nlabel = \"A\"\nof = \"opening\"\ntype = \"length\"\ntaken_as = \"diagonal-difference\"\n",
        expect![""],
    );
}

#[test]
fn words_and_types_of_it_are_held_to() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\ntaken_as = \"wide\"\n\
         [[measure]]\nid = \"panes\"\nlabel = \"P\"\ntype = \"number\"\ntaken_as = \"width\"\n\
         [[site_fact]]\nid = \"askew\"\nlabel = \"A\"\nof = \"opening\"\ntype = \"number\"\ntaken_as = \"diagonal-difference\"\n\
         [[site_fact]]\nid = \"spread\"\nlabel = \"S\"\nof = \"opening\"\ntype = \"length\"\ntaken_as = \"width\"\n",
        expect![""],
    );
}
