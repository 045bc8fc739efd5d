//! The enumerations of IFC that are about windows, by the names of their literals.
//!
//! `SLIDINGVERTICAL` is [`PanelOperation::SlidingVertical`].
//!
//! Always holds: each literal has one term and each term one literal. The order here is of no meaning.
//! Source: the schemas IFC2X3, IFC4 and IFC4X3_ADD2, whose sets of names agree. The two last enumerations begin with IFC4; the
//! literals of [`TypePartitioning`] are those of the earlier IfcWindowStyleOperationEnum.

macro_rules! enumeration {
    ($(#[doc = $doc:literal])+ $enumeration:ident, $ifc:literal { $($name:ident = $literal:literal,)+ }) => {
        $(#[doc = $doc])+
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub enum $enumeration {
            $(#[doc = concat!("`", $literal, "`.")] $name,)+
        }

        impl $enumeration {
            /// The name of the enumeration in the schema.
            pub const ENUMERATION: &str = $ifc;

            /// Every term.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// Returns the literal of the schema.
            #[must_use]
            pub fn literal(self) -> &'static str {
                match self { $(Self::$name => $literal,)+ }
            }

            /// Returns the term of a literal, in capitals as in the schema; `None` for any other text.
            #[must_use]
            pub fn from_literal(literal: &str) -> Option<Self> {
                match literal { $($literal => Some(Self::$name),)+ _ => None }
            }
        }
    };
}

enumeration! {
    /// How a panel opens.
    PanelOperation, "IfcWindowPanelOperationEnum" {
        SideHungRightHand = "SIDEHUNGRIGHTHAND",
        SideHungLeftHand = "SIDEHUNGLEFTHAND",
        TiltAndTurnRightHand = "TILTANDTURNRIGHTHAND",
        TiltAndTurnLeftHand = "TILTANDTURNLEFTHAND",
        TopHung = "TOPHUNG",
        BottomHung = "BOTTOMHUNG",
        PivotHorizontal = "PIVOTHORIZONTAL",
        PivotVertical = "PIVOTVERTICAL",
        SlidingHorizontal = "SLIDINGHORIZONTAL",
        SlidingVertical = "SLIDINGVERTICAL",
        RemovableCasement = "REMOVABLECASEMENT",
        FixedCasement = "FIXEDCASEMENT",
        OtherOperation = "OTHEROPERATION",
        NotDefined = "NOTDEFINED",
    }
}

enumeration! {
    /// Where a panel is in its unit.
    PanelPosition, "IfcWindowPanelPositionEnum" {
        Left = "LEFT",
        Middle = "MIDDLE",
        Right = "RIGHT",
        Bottom = "BOTTOM",
        Top = "TOP",
        NotDefined = "NOTDEFINED",
    }
}

enumeration! {
    /// How a unit is divided into panels; more than three are user-defined.
    TypePartitioning, "IfcWindowTypePartitioningEnum" {
        SinglePanel = "SINGLE_PANEL",
        DoublePanelVertical = "DOUBLE_PANEL_VERTICAL",
        DoublePanelHorizontal = "DOUBLE_PANEL_HORIZONTAL",
        TriplePanelVertical = "TRIPLE_PANEL_VERTICAL",
        TriplePanelBottom = "TRIPLE_PANEL_BOTTOM",
        TriplePanelTop = "TRIPLE_PANEL_TOP",
        TriplePanelLeft = "TRIPLE_PANEL_LEFT",
        TriplePanelRight = "TRIPLE_PANEL_RIGHT",
        TriplePanelHorizontal = "TRIPLE_PANEL_HORIZONTAL",
        UserDefined = "USERDEFINED",
        NotDefined = "NOTDEFINED",
    }
}

enumeration! {
    /// What kind of window it is.
    WindowType, "IfcWindowTypeEnum" {
        Window = "WINDOW",
        Skylight = "SKYLIGHT",
        LightDome = "LIGHTDOME",
        UserDefined = "USERDEFINED",
        NotDefined = "NOTDEFINED",
    }
}
