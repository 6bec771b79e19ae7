//! Every setting, with its default, its range and why: the one table, and the struct that rules
//! read. A range lets a policy tighten, and loosen only as far as stated.

use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::policy::kind::{Kind, Value};

/// One setting.
#[derive(Debug)]
pub struct Setting {
    /// Stable key, as it stands in a policy file.
    pub key: &'static str,
    /// Stable name, as it stands in a visit's record.
    pub field: &'static str,
    /// What it is, in plain words.
    pub title: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// What Penlight ships.
    pub default: i32,
    /// Why it is so, in one line.
    pub why: &'static str,
    /// The rule, or the text, that reads it.
    pub read_by: &'static str,
    /// Its value in a policy.
    pub get: fn(&Policy) -> i32,
    /// Puts a value into a policy; one that [`Setting::takes`].
    pub set: fn(&mut Policy, i32),
}

const fn whole(least: i32, most: i32, unit: &'static str) -> Kind {
    Kind::Whole { unit, least, most }
}

/// `field: type = default, kind, key, title, why, read by`.
macro_rules! settings {
    ($($field:ident: $type:ty = $default:expr, $kind:expr, $key:literal, $title:literal, $why:literal, $read_by:literal;)*) => {
        /// The settings that rules read, with the values of one policy.
        #[derive(Clone, PartialEq, Eq)]
        pub struct Policy {
            /// Name and version, as the handover gives it.
            pub name: String,
            $(
                #[doc = concat!($title, ". ", $why, " `", $key, "`")]
                pub $field: $type,
            )*
        }

        impl Default for Policy {
            // One copy of it in the app, not one a caller.
            #[inline(never)]
            fn default() -> Policy {
                Policy {
                    name: Policy::OURS.to_owned(),
                    $($field: $default,)*
                }
            }
        }

        /// Every setting, by groups, in the order shown and written.
        pub static SETTINGS: &[Setting] = &[$(
            Setting {
                key: $key,
                field: stringify!($field),
                title: $title,
                kind: $kind,
                default: $default as i32,
                why: $why,
                read_by: $read_by,
                get: |policy| policy.$field as i32,
                set: |policy, value| policy.$field = Value::of(value),
            },
        )*];
    };
}

settings! {
    requests_block: bool = false, Kind::OnOff,
        "gate.requests-close",
        "Not following one-step requests closes the gate",
        "Sources differ: one hospital list blocks, a large study only raises the odds.",
        "gate.requests";
    suction_blocks: bool = false, Kind::OnOff,
        "gate.no-suction-closes",
        "No suction within reach closes the gate",
        "Suction within reach is advised in a facility; in most homes there is none.",
        "gate.suction";
    drowsy_wait: i32 = 30, whole(15, 60, "minutes"),
        "gate.drowsy-wait",
        "Wait before asking again, when tired or drowsy",
        "About 30 minutes is published (GRA); what it becomes on a ward is local.",
        "gate.awake";
    ready_minutes: i32 = 60, whole(15, 120, "minutes"),
        "gate.ready-minutes",
        "Ask readiness, airway and breathing again before a trial by mouth when older than",
        "Common practice: readiness is a state of the moment. No published time was found.",
        "gate.ready-old";
    orders_hours: i32 = 8, whole(1, 12, "hours"),
        "gate.orders-hours",
        "Ask who it is and what is ordered again before a trial by mouth when older than",
        "Common practice: orders change from shift to shift. No published time was found.",
        "gate.ready-old";

    breaths_low: i32 = 8, whole(8, 10, "breaths a minute"),
        "breathing.block-at-or-below",
        "Adults: no water at or below",
        "Band of NEWS2, borrowed: no validated limit for a water trial was found.",
        "breathing.rate";
    breaths_high: i32 = 25, whole(22, 25, "breaths a minute"),
        "breathing.block-at-or-above",
        "Adults: no water at or above",
        "Band of NEWS2, borrowed: no validated limit for a water trial was found.",
        "breathing.rate";
    breaths_caution_low: i32 = 11, whole(9, 12, "breaths a minute"),
        "breathing.caution-at-or-below",
        "Adults: caution at or below",
        "Band of NEWS2, borrowed; above the line at which no water is offered.",
        "breathing.rate";
    breaths_caution_high: i32 = 21, whole(18, 22, "breaths a minute"),
        "breathing.caution-at-or-above",
        "Adults: caution at or above",
        "Band of NEWS2, borrowed; below the line at which no water is offered.",
        "breathing.rate";
    spo2_low: i32 = 91, whole(91, 94, "%"),
        "breathing.spo2-block-at-or-below",
        "Adults without an own target: no water at an SpO2 at or below",
        "Band of NEWS2, borrowed, for respiratory safety; SpO2 tells nothing about aspiration.",
        "breathing.spo2";
    spo2_caution: i32 = 95, whole(93, 96, "%"),
        "breathing.spo2-caution-at-or-below",
        "Adults without an own target: caution at an SpO2 at or below",
        "Band of NEWS2, borrowed; above the line at which no water is offered.",
        "breathing.spo2";
    spo2_fall: i32 = 3, whole(2, 5, "points"),
        "breathing.spo2-fall-stops",
        "A fall of SpO2 during a trial by more than this stops it",
        "No published line was found; for respiratory safety only, a fall does not show aspiration.",
        "breathing.spo2-fall";
    tap_spread: i32 = 15, whole(5, 25, "%"),
        "breathing.tap-spread",
        "Tapped breaths: an interval may differ from the middle one by",
        "The published method checks consistency; its threshold was not seen.",
        "breathing.taps";
    tap_intervals: i32 = 4, whole(4, 10, "intervals"),
        "breathing.tap-intervals",
        "Tapped breaths: least intervals for a rate",
        "More taps are more exact (published); how many is not stated where it was looked for.",
        "breathing.taps";

    dry_swallow_from_years: i32 = 16, whole(16, 20, "years"),
        "dry.from-years",
        "Youngest age for dry swallows",
        "Its studies are in adults; the healthy group of the largest starts at 20 years. \"16 or over\" is old enough.",
        "dry.adults";
    dry_none_stops: bool = true, Kind::OnOff,
        "dry.none-stops",
        "No dry swallow at all is a stop",
        "Below 3 is the published reason to look further; none at all is taken as a stop. Off: it refers.",
        "dry.none";

    voice_refers: bool = true, Kind::OnOff,
        "water.voice-refers",
        "A changed voice after 90 mL of water refers",
        "Sources differ: the first rule has the voice sign, a later version drops it. Off: it is noted.",
        "water.voice";
    water_from_years: i32 = 2, whole(2, 18, "years"),
        "water.from-years",
        "Youngest age for 90 mL of water",
        "The study in children starts at 2 years. \"16 or over\" is old enough.",
        "water.from-two";
    throat_clear_refers: bool = false, Kind::OnOff,
        "water.throat-clear-refers",
        "Clearing the throat alone with 90 mL of water refers",
        "The published rules name cough and voice, not throat clearing.",
        "water.throat-clear";

    sip_first: i32 = 3, whole(1, 5, "mL"),
        "sips.first",
        "First small sip",
        "Small before large is a design choice; accuracy is published for 1 to 5 mL together.",
        "sips.clear";
    sip_second: i32 = 5, whole(3, 10, "mL"),
        "sips.second",
        "Second small sip",
        "5, 10 and 20 mL are published steps; which to take is local.",
        "sips.clear";
    sip_third: i32 = 10, whole(5, 20, "mL"),
        "sips.third",
        "Third small sip",
        "5, 10 and 20 mL are published steps; which to take is local.",
        "sips.clear";
    sip_repeats: i32 = 2, whole(1, 3, ""),
        "sips.repeats",
        "How often each small sip is given",
        "Twice each in the published steps.",
        "sips.clear";

    small_water_wording: Wording = Wording::A,
        Kind::OneOf(&[("A", "as in research reports"), ("B", "as in a society's manual")]),
        "small-water.wording",
        "Wording of the 3 mL water result",
        "Two wordings are in use and differ in the results 2 and 3; the signs are kept either way.",
        "three-ml.residue";

    gag_counts: bool = false, Kind::OnOff,
        "six-signs.gag-counts",
        "The gag counts among the six signs",
        "The published rule has it; it is optional here and never tested before a swallow trial.",
        "six-signs.gag";

    upright_minutes: i32 = 0, whole(0, 60, "minutes"),
        "handover.upright-minutes",
        "Stay upright after eating or drinking (0 is not said)",
        "Staying upright is common advice; how long was not found published.",
        "handover";
}
