//! The facts that questions of the trade ask for, by their names.
//!
//! *Exposed glass edge above the floor* is one; a question that lacks it names it.

use std::fmt;

macro_rules! facts {
    ($($(#[doc = $doc:literal])+ $name:ident, $id:literal, $label:literal;)+) => {
        /// A fact that a question asks for.
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub enum Fact {
            $($(#[doc = $doc])+ $name,)+
        }

        impl Fact {
            /// Every fact, in order.
            pub const ALL: &[Fact] = &[$(Fact::$name,)+];

            /// The name that programs use: small letters and underscores.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $(Self::$name => $id,)+ }
            }

            /// What a person reads.
            #[must_use]
            pub fn label(self) -> &'static str {
                match self { $(Self::$name => $label,)+ }
            }
        }
    };
}

facts! {
    // --- measuring ---
    /// The width of the opening at the top, in the middle or at the bottom.
    OpeningWidth, "opening_width", "width of the opening";
    /// The height of the opening at the left, in the centre or at the right.
    OpeningHeight, "opening_height", "height of the opening";
    /// One of the two diagonals of the opening.
    OpeningDiagonal, "opening_diagonal", "diagonal of the opening";
    /// How far the jambs are out of plumb over the whole height of the opening.
    OutOfPlumb, "out_of_plumb", "how far the jambs are out of plumb";
    /// How far the head and sill are out of level over the whole width of the opening.
    OutOfLevel, "out_of_level", "how far the head and sill are out of level";
    /// Who deducts from the opening.
    DeductedBy, "deducted_by", "who deducts from the opening";
    /// What is taken off the width of the opening.
    DeductionWidth, "deduction_width", "deduction from the width";
    /// What is taken off the height of the opening.
    DeductionHeight, "deduction_height", "deduction from the height";
    /// The step to whose multiples a plant makes units.
    PlantStep, "plant_step", "step of the plant's sizes";
    /// The width of a unit, by whatever convention its question names.
    UnitWidth, "unit_width", "width of the unit";
    /// The height of a unit, by whatever convention its question names.
    UnitHeight, "unit_height", "height of the unit";
    /// The depth of the pocket that a unit must stand in.
    PocketDepth, "pocket_depth", "depth of the pocket in the old frame";

    // --- the room and what stands there now ---
    /// What the room is used for.
    RoomUse, "room_use", "what the room is used for";
    /// Whether it is part of a change of occupancy.
    ChangeOfOccupancy, "change_of_occupancy", "whether it is part of a change of occupancy";
    /// How the existing window opens.
    ExistingOperation, "existing_operation", "how the existing window opens";
    /// The clear opening of the existing window.
    ExistingClearArea, "existing_clear_area", "clear opening of the existing window";
    /// Whether the new unit is the largest standard size that fits.
    LargestStandardSizeFits, "largest_standard_size_fits", "whether the unit is the largest standard size that fits";

    // --- clear opening and heights ---
    /// How the unit opens.
    Operation, "operation", "how the unit opens";
    /// The width of the clear opening.
    ClearWidth, "clear_width", "width of the clear opening";
    /// The height of the clear opening.
    ClearHeight, "clear_height", "height of the clear opening";
    /// The bottom of the clear opening above the floor.
    BottomOfClearOpening, "bottom_of_clear_opening", "bottom of the clear opening above the floor";
    /// The lowest part of the clear opening above the floor.
    LowestPartOfOpening, "lowest_part_of_opening", "lowest part of the clear opening above the floor";
    /// The exposed edge of the glass above the floor or walking surface.
    ExposedGlassEdge, "exposed_glass_edge", "exposed glass edge above the floor";
    /// The sill above the adjacent ground outside; below zero when it lies under it.
    SillAboveGrade, "sill_above_grade", "sill above the adjacent ground";
    /// The opening above the ground or surface outside.
    HeightAboveGrade, "height_above_grade", "height of the opening above the ground outside";
    /// The device that limits how far the unit opens.
    ControlDevice, "control_device", "device that limits how far the unit opens";
    /// Whether a sphere of 4 in passes the opening where it is largest.
    PassesSphere, "passes_sphere", "whether a sphere of 4 in passes the opening";
    /// Whether a fall-prevention device lets go from the inside without keys or tools.
    DeviceReleases, "device_releases", "whether the device lets go from the inside without keys or tools";
    /// Whether it opens from the inside without keys, tools or special effort.
    OpensWithoutKeys, "opens_without_keys", "whether it opens from the inside without keys or tools";
    /// Whether this opening is the one that the room relies on for escape.
    ReliedOnForEscape, "relied_on_for_escape", "whether the room relies on this opening for escape";
    /// Whether rescuers with their apparatus reach the opening directly.
    RescueAccess, "rescue_access", "whether rescue apparatus reaches it directly";
    /// Whether it opens onto a balcony outside.
    BalconyOutside, "balcony_outside", "whether it opens onto a balcony outside";
    /// The horizontal area of a window well.
    WellArea, "well_area", "horizontal area of the window well";
    /// How far a window well reaches out from the wall.
    WellProjection, "well_projection", "projection of the window well from the wall";
    /// The width of a window well along the wall.
    WellWidth, "well_width", "width of the window well";
    /// The depth of a window well.
    WellDepth, "well_depth", "depth of the window well";
    /// Whether a window well has a ladder or steps.
    WellLadder, "well_ladder", "whether the window well has a ladder or steps";

    // --- the unit, from which its clear opening follows ---
    /// What jambs and sash take from the width when it is fully open.
    WidthLoss, "width_loss", "loss of clear width to jambs and sash";
    /// What head, sill and sash take from the height when it is fully open.
    HeightLoss, "height_loss", "loss of clear height to head, sill and sash";
    /// The share of the height that the sash takes which opens.
    SashShare, "sash_share", "share of the height that the opening sash takes";
    /// The share of the width that the sash takes which slides.
    VentFraction, "vent_fraction", "share of the width that the sliding sash takes";
    /// How far hinge and sash of a casement stand in the opening.
    HingeIntrusion, "hinge_intrusion", "intrusion of hinge and sash into the opening";
    /// How far the hinge line of a stopped casement stands from the frame.
    HingeOffset, "hinge_offset", "offset of the hinge from the frame";
    /// The width of a sash.
    SashWidth, "sash_width", "width of the sash";
    /// The thickness of a sash.
    SashThickness, "sash_thickness", "thickness of the sash";
    /// The angle to which a casement opens, as cosine and sine.
    OpeningAngle, "opening_angle", "angle to which the sash opens";
    /// The clear width and height that a catalog states for escape.
    EscapeRating, "escape_rating", "clear opening that the catalog states for escape";

    // --- glass and where it is ---
    /// The exposed area of one lite.
    LiteArea, "lite_area", "exposed area of the lite";
    /// The top of the exposed glass above the floor.
    GlassTopEdge, "glass_top_edge", "top edge of the exposed glass above the floor";
    /// The exposed edge of the glass above where one stands in or at a tub, shower, spa, sauna or pool.
    EdgeAboveWetSurface, "edge_above_wet_surface", "exposed glass edge above where one stands in or at the water";
    /// The exposed edge of the glass above the walking surface of the stair or ramp next to it.
    EdgeAboveStair, "edge_above_stair", "exposed glass edge above the stair or ramp";
    /// The exposed edge of the glass above the landing at the bottom of a stair.
    EdgeAboveLanding, "edge_above_landing", "exposed glass edge above the landing";
    /// The words of the edition that is in force, where its text was not seen.
    WordingInForce, "wording_in_force", "the wording of the edition that is in force";
    /// The horizontal distance of a walking surface from the glass.
    WalkingSurfaceDistance, "walking_surface_distance", "walking surface from the glass";
    /// Whether the glass is in a door.
    InDoor, "in_door", "whether the glass is in a door";
    /// The distance of the glass from a door, in the plane of the closed door.
    DoorDistance, "door_distance", "distance of the glass from a door";
    /// How the wall of the glass stands to the closed door.
    DoorWall, "door_wall", "how the wall of the glass stands to the door";
    /// Whether the glass is at the hinge side of a door that opens inwards.
    HingeSideOfInswingingDoor, "hinge_side_of_inswinging_door", "whether it is at the hinge side of a door that opens inwards";
    /// Whether the glass is in a guard or railing.
    InGuard, "in_guard", "whether the glass is in a guard or railing";
    /// Whether the glass is in or near a tub, shower, spa, sauna or pool.
    WetPlace, "wet_place", "whether there is a tub, shower, spa, sauna or pool";
    /// The horizontal distance of the water's edge from the glass.
    WaterEdgeDistance, "water_edge_distance", "water's edge from the glass";
    /// Whether the glass is beside a stair or a ramp.
    BesideStair, "beside_stair", "whether the glass is beside a stair or ramp";
    /// The horizontal distance of the stair's walking surface from the glass.
    StairDistance, "stair_distance", "stair or ramp from the glass";
    /// Whether the glass is at the bottom landing of a stair.
    BottomStairLanding, "bottom_stair_landing", "whether the glass is at the bottom landing of a stair";
    /// The horizontal distance of the bottom tread from the glass.
    BottomTreadDistance, "bottom_tread_distance", "bottom tread of the stair from the glass";
    /// The narrowest way across an opening in a door.
    DoorOpeningWidth, "door_opening_width", "narrowest way across the opening in the door";
    /// The depth of the closet or storage behind a door.
    ClosetDepth, "closet_depth", "depth of the closet behind the door";
    /// How high a rail before the glass is above the walking surface.
    RailHeight, "rail_height", "rail above the walking surface";
    /// How high the section of a rail before the glass is.
    RailSection, "rail_section", "height of the rail's section";
    /// What a rail before the glass takes by the foot without touching it.
    RailLoad, "rail_load", "load by the foot that the rail takes without touching the glass";
    /// The bottom edge of an outboard pane above what lies below it outside.
    OutboardPaneHeight, "outboard_pane_height", "bottom of the outboard pane above what lies below it";
    /// The distance of a guard's railing from the glass.
    GuardDistance, "guard_distance", "railing of the guard from the glass";

    // --- energy ---
    /// The climate zone of the energy code.
    CodeZone, "code_zone", "climate zone of the energy code";
    /// The zone of the voluntary programme.
    ProgrammeZone, "programme_zone", "zone of the voluntary energy programme";
    /// The U-factor of the whole unit.
    UFactor, "u_factor", "U-factor of the whole unit";
    /// The solar heat gain coefficient of the whole unit.
    SolarHeatGain, "shgc", "solar heat gain of the whole unit";
    /// The edition of the energy code.
    EnergyCodeEdition, "energy_code_edition", "edition of the energy code";
    /// The area of glazing that a value belongs to.
    GlazingArea, "glazing_area", "area of the glazing";
    /// The elevation of the house.
    Elevation, "elevation", "elevation of the house above the sea";
    /// Whether the house is in a windborne-debris region.
    WindborneDebrisRegion, "windborne_debris_region", "whether it is in a windborne-debris region";

    // --- structure and weight ---
    /// The basic wind speed.
    WindSpeed, "wind_speed", "basic wind speed";
    /// The exposure category of the site.
    Exposure, "exposure", "wind exposure of the site";
    /// The mean roof height.
    RoofHeight, "roof_height", "mean roof height";
    /// Whether the window is near a corner of the building.
    NearCorner, "near_corner", "whether the window is near a corner of the building";
    /// The slope of the roof.
    RoofSlope, "roof_slope", "slope of the roof";
    /// The performance grade of the unit.
    PerformanceGrade, "performance_grade", "performance grade of the unit";
    /// The size that was tested.
    TestedSize, "tested_size", "size that was tested";
    /// The least size of its kind that may be tested.
    GatewaySize, "gateway_size", "gateway size of its kind";
    /// The factor by which a hill or ridge speeds up the wind.
    TopographicFactor, "topographic_factor", "topographic factor of the site";
    /// The area of wall that one unit answers for.
    WindArea, "wind_area", "effective wind area";
    /// The performance class of the unit.
    PerformanceClass, "performance_class", "performance class of the unit";
    /// The design pressure of the unit.
    DesignPressure, "design_pressure", "design pressure";
    /// Whether the unit is joined to others.
    Mulled, "mulled", "whether the unit is joined to others";
    /// The performance grade that the joined assembly was rated to, as an assembly.
    AssemblyGrade, "assembly_grade", "performance grade of the joined assembly";
    /// The nominal thickness of the glass.
    GlassThickness, "glass_thickness", "thickness of the glass";
    /// The width of the glass.
    GlassWidth, "glass_width", "width of the glass";
    /// The height of the glass.
    GlassHeight, "glass_height", "height of the glass";
    /// The weight of a sash frame for each foot of its perimeter.
    FrameWeightPerFoot, "frame_weight_per_foot", "weight of the sash frame by the foot";
    /// The heaviest sash that the hardware carries.
    HardwareLimit, "hardware_limit", "heaviest sash that the hardware carries";
    /// The weight of the whole unit.
    UnitWeight, "unit_weight", "weight of the unit";
    /// The wires of a screen in each inch.
    MeshCount, "mesh_count", "wires of the screen in an inch";
    /// The diameter of a strand of the screen.
    StrandDiameter, "strand_diameter", "diameter of the screen's strand";

    // --- the house and the sale ---
    /// What kind of building is worked in, as the lead rule asks.
    BuildingKind, "building_kind", "whether it is housing or a child-occupied facility";
    /// The year in which the house was built.
    YearBuilt, "year_built", "year built";
    /// Whether a window is replaced.
    WindowReplaced, "window_replaced", "whether a window is replaced";
    /// The most painted surface that the work disturbs in one room.
    PaintDisturbedInRoom, "paint_disturbed_in_room", "painted surface disturbed in one room";
    /// The painted surface that the work disturbs outside.
    PaintDisturbedOutside, "paint_disturbed_outside", "painted surface disturbed outside";
    /// Whether painted surfaces are torn out.
    Demolition, "demolition", "whether painted surfaces are torn out";
    /// Whether a practice is used that the lead rule prohibits or restricts.
    ProhibitedPractice, "prohibited_practice", "whether a prohibited practice is used";
    /// Where the sale is made.
    PlaceOfSale, "place_of_sale", "where the sale is made";
    /// The day on which it is signed.
    DaySigned, "day_signed", "day on which it is signed";
    /// The price of the sale.
    Price, "price", "price of the sale";
}

impl fmt::Display for Fact {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.label())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fact_has_a_name_of_its_own() {
        let ids: std::collections::BTreeSet<&str> = Fact::ALL.iter().map(|fact| fact.id()).collect();
        let labels: std::collections::BTreeSet<&str> = Fact::ALL.iter().map(|fact| fact.label()).collect();
        assert_eq!((ids.len(), labels.len()), (Fact::ALL.len(), Fact::ALL.len()));
    }
}
