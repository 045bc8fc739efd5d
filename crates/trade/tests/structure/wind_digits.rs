//! Wind pressures to nine decimals, worked out apart.

use crate::number;
use astragal_trade::interval::Interval;
use astragal_trade::structure::{Exposure, ExposureReading, WindSite, WindStandard, area_share};

/// Edition of ASCE 7, reading, mph, exposure, roof height in ft, slope in degrees, sq ft, then inwards, outwards, outwards near a
/// corner. Source: computed with a decimal arithmetic library at 40 digits, logarithms and exponentials of its own.
const DIGITS: &str = "
2016 | printed | 96.3  | B | 12.5 | -  | 7.2   | 8.143658972 | -8.833799563 | -10.904221335
2016 | formula | 115   | B | 30   | -  | 15    | 13.898087415 | -15.107767284 | -18.360671850
2016 | printed | 140.5 | B | 22   | 8  | 33.3  | 16.444712057 | -17.929229392 | -21.013285433
2010 | formula | 140.5 | B | 22   | 8  | 33.3  | 18.001592683 | -19.626654667 | -23.002689497
2016 | formula | 118   | C | 59.9 | -  | 61.7  | 21.490284308 | -23.555757405 | -26.869878465
2010 | printed | 199.9 | C | 41   | 10 | 499   | 44.379675828 | -49.309909894 | -49.317479130
2010 | formula | 130   | C | 8    | 45 | 12    | 21.839900905 | -23.712933227 | -29.070149701
2016 | printed | 85    | D | 15   | -  | 250   | 9.066487621 | -10.038082501 | -10.554535179
2016 | formula | 172   | D | 33.3 | 3  | 18.75 | 47.386398452 | -51.500536433 | -61.859693052
2010 | formula | 154   | D | 60   | -  | 640   | 35.725173715 | -39.784852546 | -39.784852546
";

#[test]
fn intervals_hold_what_forty_digits_give() {
    let mut count = 0;
    for row in DIGITS.trim().lines() {
        let columns: Vec<&str> = row.split('|').map(str::trim).collect();
        let [
            edition,
            reading,
            mph,
            exposure,
            feet,
            slope,
            area,
            inward,
            outward,
            near_corner,
        ] = columns[..]
        else {
            panic!("{row}");
        };
        let site = WindSite {
            standard: if edition == "2010" {
                WindStandard::Asce7In2010
            } else {
                WindStandard::Asce7In2016
            },
            reading: if reading == "formula" {
                ExposureReading::Formula
            } else {
                ExposureReading::Printed
            },
            roof_slope: (slope != "-").then(|| number(slope)),
            ..crate::site(mph, Exposure::from_text(exposure).unwrap(), feet)
        };
        let found = crate::wind::pressures(&site, area);
        assert!(found.inward.contains(&number(inward)), "{row}: {}", found.inward);
        assert!(
            found.outward.contains(&number(outward)),
            "{row}: {}",
            found.outward
        );
        assert!(
            found.outward_near_corner.contains(&number(near_corner)),
            "{row}: {}",
            found.outward_near_corner
        );
        count += 1;
    }
    assert_eq!(count, 10);
}

#[test]
fn the_ends_of_the_logarithmic_scale_are_exact() {
    let rows = [
        ("1440", Some("0")),
        ("1", Some("0")),
        ("72000", Some("1")),
        ("72001", Some("1")),
        ("1441", None),
        ("71999", None),
    ];
    for (square_inches, expected) in rows {
        let share = area_share(&number(square_inches));
        let exact = expected.map(|text| Interval::exact(number(text)));
        assert_eq!(share.low() == share.high(), exact.is_some(), "{square_inches}");
        assert!(exact.is_none_or(|exact| exact == share), "{square_inches}");
    }
}
