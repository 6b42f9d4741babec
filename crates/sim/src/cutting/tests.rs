//! Outside cases of cutting.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::*;
use quantity::Quantity as _;

fn mm(mm: f64) -> Length {
    Length::from_base(mm / 1000.0)
}

fn bar(length: f64, price: u64) -> Bar {
    Bar {
        length: mm(length),
        trim: mm(0.0),
        price,
        count: None,
    }
}

fn problem(bars: &[Bar], lengths: &[f64], counts: &[u32], kerf: f64) -> Cutting {
    let pieces = lengths.iter().zip(counts).map(|(length, count)| Piece {
        length: mm(*length),
        count: *count,
    });
    Cutting {
        bars: bars.to_vec(),
        pieces: pieces.collect(),
        kerf: mm(kerf),
    }
}

/// The plan gives what is asked, and no bar is overfull.
fn sound(given: &Cutting, plan: &Plan) {
    let mut wanted: Vec<u32> = given.pieces.iter().map(|piece| piece.count).collect();
    for cut in &plan.cuts {
        let bar = given.bars[cut.bar];
        let mut used = bar.trim.base() - given.kerf.base();
        for piece in &cut.pieces {
            wanted[*piece] -= cut.times;
            used += given.pieces[*piece].length.base() + given.kerf.base();
        }
        assert!(used <= bar.length.base() + 1e-9, "{cut:?}");
    }
    assert!(wanted.iter().all(|left| *left == 0), "{wanted:?}");
    for (at, bar) in given.bars.iter().enumerate() {
        let used: u32 = plan
            .cuts
            .iter()
            .filter(|cut| cut.bar == at)
            .map(|cut| cut.times)
            .sum();
        assert!(used <= bar.count.unwrap_or(u32::MAX));
    }
}

fn fewest(length: f64, lengths: &[f64], counts: &[u32]) -> Plan {
    let given = problem(&[bar(length, 100)], lengths, counts, 0.0);
    let plan = cut(&given, Effort::THOROUGH).unwrap();
    sound(&given, &plan);
    assert!(plan.is_least(), "{:?}", plan.bound);
    plan
}

#[test]
fn known_instances_have_their_known_least() {
    // The example of the cutting-stock article of an open encyclopedia: 73 rolls of 5600 mm, 0.401 % waste.
    let lengths = [
        1380.0, 1520.0, 1560.0, 1710.0, 1820.0, 1880.0, 1930.0, 2000.0, 2050.0, 2100.0, 2140.0,
        2150.0, 2200.0,
    ];
    let counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    assert_eq!(fewest(5600.0, &lengths, &counts).bars(), 73);
    // Textbook of linear programming, 1983, chapter 13: fractions give 452.25, so 453.
    let textbook = fewest(100.0, &[45.0, 36.0, 31.0, 14.0], &[97, 610, 395, 211]);
    assert_eq!(textbook.bars(), 453);
    // Roll-trim example of a modeling language's book: 47 rolls of 110.
    let rolls = fewest(110.0, &[20.0, 45.0, 50.0, 55.0, 75.0], &[48, 35, 24, 10, 8]);
    assert_eq!(rolls.bars(), 47);
    assert_eq!(fewest(10.0, &[7.0, 5.0, 3.0], &[2, 2, 4]).bars(), 4);
}

#[test]
fn u120_00_takes_48() {
    // OR-Library, uniform class: 48 bins of 150, where first fit takes 49.
    let lengths = [
        98, 96, 94, 93, 92, 91, 90, 87, 86, 85, 84, 83, 82, 81, 80, 79, 78, 76, 74, 73, 72, 71, 70,
        69, 67, 66, 64, 62, 60, 59, 58, 57, 55, 50, 49, 47, 46, 45, 44, 43, 42, 41, 39, 38, 37, 36,
        35, 33, 32, 30, 29, 28, 27, 26, 25, 24, 23, 20,
    ];
    let counts = [
        3, 2, 1, 2, 1, 2, 1, 1, 1, 2, 5, 2, 2, 1, 3, 2, 4, 1, 2, 4, 1, 1, 3, 3, 1, 1, 1, 2, 2, 1,
        3, 4, 3, 1, 3, 1, 2, 2, 2, 4, 5, 3, 2, 3, 1, 3, 1, 3, 2, 3, 1, 1, 2, 1, 2, 1, 2, 1,
    ];
    let lengths: Vec<f64> = lengths.iter().map(|length| f64::from(*length)).collect();
    assert_eq!(fewest(150.0, &lengths, &counts).bars(), 48);
}

#[test]
fn of_several_bars_the_least_length_is_drawn() {
    // A question of a public mathematics text: bars of 20, 25 and 40 ft for 2 × 16, 3 × 12 and 5 × 5 ft; 100 ft, by integer
    // programming over all patterns.
    let ft = |feet: f64| feet * 304.8;
    let bars = [ft(20.0), ft(25.0), ft(40.0)].map(|length| bar(length, 0));
    let given = problem(&bars, &[16.0, 12.0, 5.0].map(ft), &[2, 3, 5], 0.0);
    let plan = cut(&given, Effort::THOROUGH).unwrap();
    sound(&given, &plan);
    assert!(plan.is_least());
    let Least::Drawn(drawn) = plan.cost else {
        unreachable!("nothing has a price")
    };
    assert!((drawn.base() - 30.48).abs() < 1e-9, "{drawn:?}");
}

#[test]
fn each_cut_takes_the_width_of_the_saw_and_the_last_may_be_left_out() {
    let inch = 25.4;
    let eight = problem(
        &[bar(240.0 * inch, 100)],
        &[60.0 * inch],
        &[8],
        0.125 * inch,
    );
    assert_eq!(cut(&eight, Effort::THOROUGH).unwrap().bars(), 3);
    let four = problem(
        &[bar(240.0 * inch, 100)],
        &[59.875 * inch],
        &[4],
        0.125 * inch,
    );
    let plan = cut(&four, Effort::THOROUGH).unwrap();
    assert_eq!(plan.bars(), 1);
    assert!(plan.cuts[0].left.base().abs() < 1e-9);
    let exact = problem(
        &[bar(240.0 * inch, 100)],
        &[240.0 * inch],
        &[1],
        0.125 * inch,
    );
    assert_eq!(cut(&exact, Effort::THOROUGH).unwrap().bars(), 1);
}

#[test]
fn off_cuts_come_first_and_counts_are_kept() {
    let off_cut = Bar {
        count: Some(1),
        ..bar(2100.0, 0)
    };
    let given = problem(&[bar(6000.0, 5000), off_cut], &[2000.0], &[4], 3.0);
    let plan = cut(&given, Effort::THOROUGH).unwrap();
    sound(&given, &plan);
    assert_eq!(plan.cost, Least::Price(10_000));
    let given = problem(&[bar(6000.0, 5000), off_cut], &[2000.0], &[3], 0.0);
    assert_eq!(
        cut(&given, Effort::THOROUGH).unwrap().cost,
        Least::Price(5000)
    );
    let three = problem(&[bar(6000.0, 5000), off_cut], &[2000.0], &[3], 3.0);
    assert_eq!(
        cut(&three, Effort::THOROUGH).unwrap().cost,
        Least::Price(5000)
    );
}

#[test]
fn worths_are_a_proof_that_can_be_checked_by_hand() {
    // One piece on one bar is worth the bar, however long the bar; eight of 60 in. on bars of 240 in. are worth a third of one.
    let one = problem(&[bar(7300.0, 13_400)], &[6550.0], &[1], 3.0);
    assert_eq!(cut(&one, Effort::THOROUGH).unwrap().worths, [1_340_000]);
    let eight = problem(&[bar(6096.0, 9000)], &[1524.0], &[8], 3.0);
    let plan = cut(&eight, Effort::THOROUGH).unwrap();
    assert_eq!(
        (plan.cost, plan.worths.as_slice()),
        (Least::Price(27_000), &[300_000][..])
    );
    // An off-cut that costs nothing holds a piece that is worth something: there, worths show nothing.
    let off_cut = Bar {
        count: Some(1),
        ..bar(2100.0, 0)
    };
    let given = problem(&[bar(6000.0, 5000), off_cut], &[2000.0], &[4], 3.0);
    assert_eq!(cut(&given, Effort::THOROUGH).unwrap().worths, [0]);
}

#[test]
fn what_cannot_be_cut_is_said() {
    let long = problem(&[bar(6000.0, 100)], &[6001.0], &[1], 3.0);
    assert_eq!(
        cut(&long, Effort::QUICK),
        Err(Uncuttable::TooLong { piece: 0 })
    );
    let two = Bar {
        count: Some(2),
        ..bar(6000.0, 100)
    };
    let many = problem(&[two], &[2500.0], &[5], 3.0);
    assert_eq!(cut(&many, Effort::THOROUGH), Err(Uncuttable::TooFew));
    let none = problem(&[two], &[], &[], 3.0);
    assert_eq!(cut(&none, Effort::QUICK).unwrap().bars(), 0);
    let wrong = problem(&[bar(f64::NAN, 1)], &[1.0], &[1], 3.0);
    assert!(matches!(
        cut(&wrong, Effort::QUICK),
        Err(Uncuttable::Refused(_))
    ));
    let no_bar = problem(&[], &[1.0], &[1], 3.0);
    assert_eq!(
        cut(&no_bar, Effort::QUICK),
        Err(Uncuttable::TooLong { piece: 0 })
    );
}
