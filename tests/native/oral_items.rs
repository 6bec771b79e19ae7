//! The items of the examination of face, mouth and throat: that each is there, with its wording,
//! what to look for, its nerve and its caution; how each is settled; where it stands on the
//! picture; and touches taken back one by one.

use penlight::clinical::findings::oral::{Answer, Oral, Seen, Sides, Touches};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::item::Spot;
use penlight::clinical::knowledge::oral::{By, Cranial, Region, Takes};
use penlight::wording::oral_items as words;

/// What an examination of the oral mechanism looks at, each with its nerve (textbook; ALPF, DER,
/// CN-REV, BOL07) and how it is settled.
const WHOLE: &[(&str, &[&str], Cranial, By)] = &[
    (
        "face at rest, brows, eyes",
        &["face.rest", "face.forehead", "face.eyes"],
        Cranial::Seventh,
        By::Eye,
    ),
    ("neck at rest", &["neck.rest"], Cranial::None, By::Eye),
    (
        "lips together, smile, pucker",
        &["lips.together", "lips.smile", "lips.pucker"],
        Cranial::Seventh,
        By::Eye,
    ),
    (
        "cheeks held, depressor held against a pull",
        &["lips.cheeks", "lips.pull"],
        Cranial::Seventh,
        By::Hand,
    ),
    (
        "jaw open and close, side to side, forward and back",
        &["jaw.open", "jaw.sides", "jaw.forward"],
        Cranial::Fifth,
        By::Eye,
    ),
    (
        "jaw strength",
        &["jaw.bite", "jaw.against", "jaw.against-side"],
        Cranial::Fifth,
        By::Hand,
    ),
    (
        "opening in millimetres or finger-breadths",
        &["jaw.mm", "jaw.fingers"],
        Cranial::Fifth,
        By::Alone,
    ),
    (
        "teeth, gums, lining, saliva, cleanliness, pockets, hard palate",
        &[
            "teeth.upper",
            "teeth.lower",
            "mouth.gums",
            "mouth.lining",
            "mouth.moist",
            "mouth.clean",
            "mouth.sulci",
            "mouth.hard-palate",
        ],
        Cranial::None,
        By::Eye,
    ),
    (
        "tongue at rest and moving",
        &[
            "tongue.rest",
            "tongue.out",
            "tongue.sides",
            "tongue.up",
            "tongue.palate",
            "tongue.lick-upper",
            "tongue.lick-lower",
            "tongue.back",
        ],
        Cranial::Twelfth,
        By::Eye,
    ),
    (
        "tongue into each cheek",
        &["tongue.push"],
        Cranial::Twelfth,
        By::Hand,
    ),
    (
        "soft palate at rest and on \"ah\"",
        &["palate.rest", "palate.ah"],
        Cranial::Tenth,
        By::Eye,
    ),
    ("gag", &["gag"], Cranial::Tenth, By::Alone),
    (
        "touch in the throat",
        &["touch.palate", "touch.tongue-back"],
        Cranial::Ninth,
        By::Alone,
    ),
    (
        "touch on the face",
        &["touch.forehead", "touch.cheek", "touch.chin"],
        Cranial::Fifth,
        By::Hand,
    ),
    (
        "touch on tongue sides and inner cheeks",
        &["touch.tongue", "touch.inner-cheek"],
        Cranial::Fifth,
        By::Hand,
    ),
    ("taste", &["taste"], Cranial::Seventh, By::Alone),
    (
        "breathing through the nose",
        &["nose"],
        Cranial::None,
        By::Eye,
    ),
    (
        "voice on \"ah\", pitch, cough, throat clear",
        &["voice.ah", "voice.pitch", "cough", "throat.clear"],
        Cranial::Tenth,
        By::Eye,
    ),
    ("speech", &["speech"], Cranial::Several, By::Eye),
    (
        "four fingers on a dry swallow",
        &["larynx"],
        Cranial::Several,
        By::Hand,
    ),
    ("peak cough flow", &["cough.flow"], Cranial::None, By::Alone),
    (
        "head turn, shoulder shrug",
        &["neck.strength"],
        Cranial::Eleventh,
        By::Alone,
    ),
];

#[test]
fn everything_is_there_with_its_nerve_and_its_way_of_being_settled() {
    for (what, ids, nerve, by) in WHOLE {
        for id in *ids {
            let item = oral::find(id);
            assert!(item.is_some(), "{what}: {id}");
            let item = item.unwrap();
            assert_eq!((item.nerve, item.by), (*nerve, *by), "{what}: {id}");
        }
    }
    let listed: Vec<&str> = WHOLE
        .iter()
        .flat_map(|(_, ids, _, _)| *ids)
        .copied()
        .collect();
    for item in oral::items() {
        // Seen on the way to the palate.
        assert!(
            listed.contains(&item.id) || item.id == "throat.wall",
            "{}",
            item.id
        );
    }
}

#[test]
fn each_says_what_to_ask_what_to_look_for_and_what_to_mind() {
    for item in oral::items() {
        for said in [words::ask(item), words::look(item)] {
            assert!(
                said.len() > 8 && said.ends_with(['.', '?']),
                "{}: {said:?}",
                item.id
            );
        }
        let care = words::region_care(Region::of(item));
        assert!(
            !(words::care(item).is_empty() && care.is_empty()),
            "{}",
            item.id
        );
    }
    // The cautions of what can harm stand with it.
    let care = |id: &str| words::care(oral::find(id).unwrap());
    let of_region = words::region_care;
    assert!(
        of_region(Region::Gag).contains("refuses")
            && of_region(Region::Gag).contains("loose teeth")
    );
    for id in ["teeth.upper", "teeth.lower"] {
        assert!(care(id).contains("loose tooth"));
    }
    assert!(care("jaw.bite").contains("loose teeth"));
    assert!(of_region(Region::Lips).contains("Loose teeth"));
    for region in [Region::Lips, Region::Mouth, Region::Palate] {
        assert!(
            of_region(region).contains("single-use depressor"),
            "{region:?}"
        );
    }
    assert!(care("gag").contains("ingle-use depressor"));
}

/// Touches are pressed felt, felt less or not felt: whatever is stored, there are never more hits
/// than touches.
#[test]
fn never_more_hits_than_touches() {
    for felt in [0, 1, 3, u8::MAX] {
        for less in [0, 2, u8::MAX] {
            for missed in [0, 1, u8::MAX] {
                let touches = Touches { felt, less, missed };
                assert!(touches.hits() <= touches.all());
            }
        }
    }
    for stored in [
        r#"{"Touched":{"left":{"felt":-1,"less":0,"missed":0},"right":{"felt":0,"less":0,"missed":0}}}"#,
        r#"{"Touched":{"left":{"hits":4,"of":3},"right":{"hits":1,"of":3}}}"#,
    ] {
        assert!(serde_json::from_str::<Seen>(stored).is_err(), "{stored}");
    }
}

fn touched(left: (u8, u8), right: (u8, u8)) -> Seen {
    let touches = |(felt, missed)| Touches {
        felt,
        less: 0,
        missed,
    };
    Seen::Touched {
        left: touches(left),
        right: touches(right),
    }
}

#[test]
fn touches_are_taken_back_one_by_one() {
    let item = oral::find("touch.tongue").unwrap();
    let other = oral::find("touch.inner-cheek").unwrap();
    let mut oral = Oral::default();
    let put = |oral: &mut Oral, id: &str, seen: &Seen| {
        oral.take(vec![(id.to_owned(), seen.clone())]);
    };
    let steps = [
        touched((1, 0), (0, 0)),
        touched((1, 0), (1, 0)),
        touched((1, 1), (1, 0)),
        touched((1, 1), (1, 1)),
    ];
    for seen in &steps {
        put(&mut oral, item.id, seen);
        // Touches elsewhere in between are their own.
        put(&mut oral, other.id, seen);
    }
    for before in steps.iter().rev().skip(1) {
        assert_eq!(oral.before_touch(item), Some(before));
        put(&mut oral, item.id, before);
        assert_eq!(oral.seen(item), Some(before));
    }
    assert_eq!(oral.before_touch(item), None);
    assert_eq!(oral.before_touch(other), Some(&steps[2]));
    // After some were taken back, the count goes on, and the next undo knows the newest.
    put(&mut oral, item.id, &touched((2, 0), (0, 0)));
    assert_eq!(oral.before_touch(item), Some(&steps[0]));
    // Another answer ends it.
    put(&mut oral, item.id, &Seen::AsExpected);
    assert_eq!(oral.before_touch(item), None);
    oral.take_back(&[other.id.to_owned()]);
    assert_eq!(oral.before_touch(other), None);
    assert_eq!(oral.answer(other), Answer::Open);
}

/// A place is 64 units wide and as high; none lies over the next or over the edge, and the
/// patient's right is on the left of the picture.
#[test]
fn the_places_of_a_picture_lie_apart() {
    for region in Region::ALL {
        let spots: Vec<(&str, Spot)> = region
            .items()
            .filter_map(|item| Some((item.id, item.spot?)))
            .flat_map(|(id, Spot(x, y))| [(id, Spot(x, y)), (id, Spot(320 - x, y))])
            .collect();
        for (at, (id, Spot(x, y))) in spots.iter().enumerate() {
            assert!(
                (32..=288).contains(x) && (32..=224).contains(y),
                "{id}: {x}, {y}"
            );
            for (other, Spot(a, b)) in &spots[at + 1..] {
                let apart = (x - a).abs().max((y - b).abs());
                assert!(apart >= 64, "{id} and {other}: {apart}");
            }
        }
    }
    assert_eq!(Sides::ALL[0], Sides::Right);
    for item in oral::items().filter(|i| i.takes == Takes::Touches && i.by == By::Hand) {
        assert_eq!(Region::of(item), Region::Feeling);
    }
}
