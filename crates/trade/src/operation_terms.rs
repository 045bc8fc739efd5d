//! How a unit opens, in the terms of IFC, the open standard for data about buildings.
//!
//! A double-hung unit has two panels that slide vertically: `SLIDINGVERTICAL` at the `TOP` and at the `BOTTOM`.
//!
//! **The hand.** IFC says of a side-hung right-hand panel that it opens to the right when viewed from outside, and in the same
//! page that outside is seen in the direction in which panels open. For a unit that opens outwards both cannot be a plain
//! reading. So a hinge is kept here as a side and who sees it ([`Hinge`]), and no hand of IFC is given unless the caller says
//! how it is read ([`HandReading`]); otherwise both terms are ([`PanelTerm::EitherHand`]).
//!
//! **Two panels.** The wording of double-panel vertical and horizontal is ambiguous as well: neither is given.
//!
//! Always holds: terms go by their names, never by their place in a list, which differs between versions of the schema.
//! Every term is one of the schema. Cost: constant.
//!
//! Source: the documentation of IFC 4.3 (IfcWindowPanelOperationEnum, IfcWindowTypePartitioningEnum); the names in the schemas
//! IFC2X3, IFC4 and IFC4X3_ADD2, which agree.

mod ifc;

pub use ifc::{PanelOperation, PanelPosition, TypePartitioning, WindowType};

/// A side of a unit, for somebody who sees it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum HingeSide {
    /// To the left of who sees it.
    Left,
    /// To the right of who sees it.
    Right,
}

/// From where a unit is seen.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Viewer {
    /// From outside.
    Outside,
    /// From inside.
    Inside,
}

/// Where the hinges are, and for whom: a side alone says nothing.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Hinge {
    /// The side of the hinges.
    pub side: HingeSide,
    /// Who sees them there.
    pub seen_from: Viewer,
}

/// How a whole unit opens, as data about a building has it; what it leaves clear is another question, with another list:
/// [`clear_opening::Operation`](crate::clear_opening::Operation).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum UnitOperation {
    /// One sash, hinged at a side.
    Casement(Hinge),
    /// One sash, hinged at the top.
    Awning,
    /// One sash, hinged at the bottom.
    Hopper,
    /// Two sashes one above the other, of which the lower slides.
    SingleHung,
    /// Two sashes one above the other, which both slide.
    DoubleHung,
    /// Two sashes side by side, of which one slides.
    Slider,
    /// Does not open.
    Fixed,
    /// One sash, hinged at a side and at the bottom.
    TiltTurn(Hinge),
}

/// How a reader of IFC takes its hands: where the hinges of a right-hand panel are.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct HandReading {
    /// The hinges of what is called right-hand.
    pub right_hand: Hinge,
}

/// The IFC term of one panel.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum PanelTerm {
    /// This one.
    Named(PanelOperation),
    /// One of the two, left-hand first: it depends on how hands are read, and nobody has said.
    EitherHand(PanelOperation, PanelOperation),
}

/// One panel of a unit in IFC terms.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Panel {
    /// How it opens.
    pub operation: PanelTerm,
    /// Where it is, when that does not depend on who sees it.
    pub position: Option<PanelPosition>,
}

impl HingeSide {
    /// Returns the other side.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

impl Hinge {
    /// Returns the side on which the hinges are for somebody outside.
    ///
    /// # Examples
    /// ## What is right inside is left outside
    /// ```
    /// use astragal_trade::operation_terms::{Hinge, HingeSide, Viewer};
    /// let hinge = Hinge { side: HingeSide::Right, seen_from: Viewer::Inside };
    /// assert_eq!(hinge.from_outside(), HingeSide::Left);
    /// ```
    #[must_use]
    pub fn from_outside(self) -> HingeSide {
        match self.seen_from {
            Viewer::Outside => self.side,
            Viewer::Inside => self.side.opposite(),
        }
    }
}

impl UnitOperation {
    /// Returns the panels of such a unit in IFC terms, from the top down; of a slider the one that slides first.
    ///
    /// `reading` says how hands are read; without it a hinged panel is either hand.
    ///
    /// # Source
    /// IFC 4.3, IfcWindowPanelOperationEnum; which of its terms stands for which operation is our own reading.
    ///
    /// # Examples
    /// ## A double-hung unit
    /// ```
    /// use astragal_trade::operation_terms::{UnitOperation, PanelOperation, PanelTerm};
    /// let panels = UnitOperation::DoubleHung.panels(None);
    /// let sliding = PanelTerm::Named(PanelOperation::SlidingVertical);
    /// assert_eq!(panels.iter().map(|panel| panel.operation).collect::<Vec<_>>(), [sliding, sliding]);
    /// ```
    /// ## A casement, and nobody says how hands are read
    /// ```
    /// use astragal_trade::operation_terms::{Hinge, HingeSide, UnitOperation, PanelOperation, PanelTerm, Viewer};
    /// let hinge = Hinge { side: HingeSide::Left, seen_from: Viewer::Outside };
    /// let either = PanelTerm::EitherHand(PanelOperation::SideHungLeftHand, PanelOperation::SideHungRightHand);
    /// let panels = UnitOperation::Casement(hinge).panels(None);
    /// assert_eq!(panels.first().map(|panel| panel.operation), Some(either));
    /// ```
    #[must_use]
    pub fn panels(self, reading: Option<HandReading>) -> Vec<Panel> {
        use PanelOperation as Ifc;
        let at = |operation, position| Panel {
            operation: PanelTerm::Named(operation),
            position: Some(position),
        };
        let alone = |operation| Panel {
            operation,
            position: None,
        };
        let named = |operation| alone(PanelTerm::Named(operation));
        match self {
            Self::Casement(hinge) => vec![alone(by_hand(
                hinge,
                reading,
                Ifc::SideHungLeftHand,
                Ifc::SideHungRightHand,
            ))],
            Self::TiltTurn(hinge) => vec![alone(by_hand(
                hinge,
                reading,
                Ifc::TiltAndTurnLeftHand,
                Ifc::TiltAndTurnRightHand,
            ))],
            Self::Awning => vec![named(Ifc::TopHung)],
            Self::Hopper => vec![named(Ifc::BottomHung)],
            Self::SingleHung => vec![
                at(Ifc::FixedCasement, PanelPosition::Top),
                at(Ifc::SlidingVertical, PanelPosition::Bottom),
            ],
            Self::DoubleHung => vec![
                at(Ifc::SlidingVertical, PanelPosition::Top),
                at(Ifc::SlidingVertical, PanelPosition::Bottom),
            ],
            Self::Slider => vec![named(Ifc::SlidingHorizontal), named(Ifc::FixedCasement)],
            Self::Fixed => vec![named(Ifc::FixedCasement)],
        }
    }

    /// Returns how IFC calls the division of such a unit into panels; `None` for two, where its wording is ambiguous.
    ///
    /// # Examples
    /// ## One panel, and two
    /// ```
    /// use astragal_trade::operation_terms::{UnitOperation, TypePartitioning};
    /// assert_eq!(UnitOperation::Awning.partitioning(), Some(TypePartitioning::SinglePanel));
    /// assert_eq!(UnitOperation::DoubleHung.partitioning(), None);
    /// ```
    #[must_use]
    pub fn partitioning(self) -> Option<TypePartitioning> {
        match self {
            Self::SingleHung | Self::DoubleHung | Self::Slider => None,
            Self::Casement(_) | Self::TiltTurn(_) | Self::Awning | Self::Hopper | Self::Fixed => {
                Some(TypePartitioning::SinglePanel)
            }
        }
    }
}

fn by_hand(
    hinge: Hinge,
    reading: Option<HandReading>,
    left: PanelOperation,
    right: PanelOperation,
) -> PanelTerm {
    match reading {
        None => PanelTerm::EitherHand(left, right),
        Some(reading) if reading.right_hand.from_outside() == hinge.from_outside() => PanelTerm::Named(right),
        Some(_) => PanelTerm::Named(left),
    }
}
