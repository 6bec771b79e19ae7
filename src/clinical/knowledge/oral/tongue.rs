//! Tongue.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, graded, graded_on, on, plain, towards,
};
use crate::clinical::knowledge::rules;

const SHORT: Points = Points::Range;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "tongue.rest",
        name: "Tongue at rest",
        ask: "Open your mouth and let your tongue lie still.",
        look: "Bulk, furrows, fine twitching: only while it lies in the mouth, not when it is put out.",
        nerve: Cranial::Twelfth,
        exceptions: &[
            graded_on("wasted", "thin or furrowed").says(Points::Wasted),
            on("twitching", "twitches").says(Points::Twitching),
            plain("moves", "moves by itself"),
            plain("large", "large or swollen"),
        ],
        spot: Some(Spot(122, 96)),
        ..BLANK
    },
    Item {
        id: "tongue.out",
        name: "Tongue put out",
        ask: "Put your tongue out, straight.",
        look: "Straight. With a weak face judge by the middle of the teeth, not of the lips.",
        nerve: Cranial::Twelfth,
        exceptions: &[
            towards(
                "to-side",
                "points to one side",
                "points to the",
                Points::TongueTo,
            ),
            graded("short", "does not come out fully").says(SHORT),
        ],
        spot: Some(Spot(122, 214)),
        rule: Some(&rules::TONGUE_RANGE),
        ..BLANK
    },
    Item {
        id: "tongue.sides",
        name: "Tongue side to side",
        ask: "Touch one corner of your mouth with your tongue, then the other. Quickly, a few times.",
        look: "Reaches both corners, even pace.",
        nerve: Cranial::Twelfth,
        exceptions: &[
            graded_on("short", "does not reach the corner").says(SHORT),
            graded("slow", "slow or uneven"),
        ],
        spot: Some(Spot(52, 84)),
        ..BLANK
    },
    Item {
        id: "tongue.up",
        name: "Tongue tip up",
        ask: "Lift the tip of your tongue to behind your upper teeth.",
        look: "Lifts without the jaw.",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("short", "does not lift fully").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.palate",
        name: "Tongue along the palate",
        ask: "Run the tip of your tongue back along the roof of your mouth.",
        look: "Reaches the soft part.",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("short", "does not reach back").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.lick-upper",
        name: "Tongue licks the upper lip",
        ask: "Lick your upper lip, from corner to corner.",
        look: "The whole lip.",
        nerve: Cranial::Twelfth,
        exceptions: &[graded_on("short", "misses part of it").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.lick-lower",
        name: "Tongue licks the lower lip",
        ask: "And your lower lip.",
        look: "The whole lip.",
        nerve: Cranial::Twelfth,
        exceptions: &[graded_on("short", "misses part of it").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.back",
        name: "Back of the tongue",
        ask: "Say: g, g, g.",
        look: "A clear, hard g each time.",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("weak", "g not clear")],
        ..BLANK
    },
    Item {
        id: "tongue.push",
        name: "Tongue into each cheek",
        ask: "Push your tongue into your cheek, against my finger. Now the other cheek.",
        look: "Equally strong into both cheeks. Named by the cheek pushed into.",
        nerve: Cranial::Twelfth,
        by: By::Hand,
        exceptions: &[graded_on("weak", "push into the cheek weak").says(Points::Push)],
        spot: Some(Spot(52, 150)),
        ..BLANK
    },
];
