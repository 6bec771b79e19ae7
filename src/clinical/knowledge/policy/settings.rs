//! Every setting, with its default, its range and why: the one table, and the struct that rules
//! read. A range lets a policy tighten, and loosen only as far as stated.

use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::policy::kind::{Kind, Unit, Value};
use crate::measure::time::Millis;

/// One setting.
#[derive(Debug)]
pub struct Setting {
    /// Stable key, as it stands in a policy file.
    pub key: &'static str,
    /// Stable name, as it stands in a visit's record.
    pub field: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// What Penlight ships.
    pub default: i32,
    /// Why it is so, in one line: its source, or that there is none. It belongs to the figure, as the
    /// reason of a rule does in `rules.csv`; all other words of a setting are in `crate::wording::policy`.
    pub why: &'static str,
    /// The rule, or the text, that reads it.
    pub read_by: &'static str,
    /// Its value in a policy.
    pub get: fn(&Policy) -> i32,
    /// Puts a value into a policy; one that [`Setting::takes`].
    pub set: fn(&mut Policy, i32),
}

const fn whole(least: i32, most: i32, unit: Unit) -> Kind {
    Kind::Whole { unit, least, most }
}

/// `field: type = default, kind, key, why, read by`.
macro_rules! settings {
    ($($field:ident: $type:ty = $default:expr, $kind:expr, $key:literal, $why:literal, $read_by:literal;)*) => {
        /// The settings that rules read, with the values of one policy.
        #[derive(Clone, PartialEq, Eq)]
        pub struct Policy {
            /// Name and version, as the handover gives it.
            pub name: String,
            $(
                #[doc = concat!("`", $key, "`. ", $why)]
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
    slp_here: bool = true, Kind::OnOff,
        "visit.speech-language-pathologist",
        "Common practice: a phone that many share can't tell who holds it. Off: trained screeners only.",
        "visit";
    requests_block: bool = false, Kind::OnOff,
        "gate.requests-close",
        "Sources differ: one hospital list blocks, a large study only raises the odds.",
        "gate.requests";
    suction_blocks: bool = false, Kind::OnOff,
        "gate.no-suction-closes",
        "Suction within reach is advised in a facility; in most homes there is none.",
        "gate.suction";
    drowsy_wait: i32 = 30, whole(15, 60, Unit::Minutes),
        "gate.drowsy-wait",
        "About 30 minutes is published (GRA); what it becomes on a ward is local.",
        "gate.awake";
    ready_minutes: i32 = 60, whole(15, 120, Unit::Minutes),
        "gate.ready-minutes",
        "Common practice: readiness is a state of the moment. No published time was found.",
        "gate.ready-old";
    orders_hours: i32 = 8, whole(1, 12, Unit::Hours),
        "gate.orders-hours",
        "Common practice: orders change from shift to shift. No published time was found.",
        "gate.ready-old";

    breaths_low: i32 = 8, whole(8, 10, Unit::BreathsAMinute),
        "breathing.block-at-or-below",
        "Band of NEWS2, borrowed: no validated limit for a water trial was found.",
        "breathing.rate";
    breaths_high: i32 = 25, whole(22, 25, Unit::BreathsAMinute),
        "breathing.block-at-or-above",
        "Band of NEWS2, borrowed: no validated limit for a water trial was found.",
        "breathing.rate";
    breaths_caution_low: i32 = 11, whole(9, 12, Unit::BreathsAMinute),
        "breathing.caution-at-or-below",
        "Band of NEWS2, borrowed; above the line at which no water is offered.",
        "breathing.rate";
    breaths_caution_high: i32 = 21, whole(18, 22, Unit::BreathsAMinute),
        "breathing.caution-at-or-above",
        "Band of NEWS2, borrowed; below the line at which no water is offered.",
        "breathing.rate";
    spo2_low: i32 = 91, whole(91, 94, Unit::Percent),
        "breathing.spo2-block-at-or-below",
        "Band of NEWS2, borrowed, for respiratory safety; SpO2 tells nothing about aspiration.",
        "breathing.spo2";
    spo2_caution: i32 = 95, whole(93, 96, Unit::Percent),
        "breathing.spo2-caution-at-or-below",
        "Band of NEWS2, borrowed; above the line at which no water is offered.",
        "breathing.spo2";
    spo2_fall: i32 = 2, whole(2, 5, Unit::Points),
        "breathing.spo2-fall-stops",
        "No published line was found, and 2 points lie within the error of the device. Told; it stops only with a sign or faster breathing.",
        "breathing.spo2-fall";
    tap_spread: i32 = 15, whole(5, 25, Unit::Percent),
        "breathing.tap-spread",
        "The published method checks consistency; its threshold was not seen.",
        "breathing.taps";
    tap_intervals: i32 = 4, whole(4, 10, Unit::Intervals),
        "breathing.tap-intervals",
        "More taps are more exact (published); how many is not stated where it was looked for.",
        "breathing.taps";

    dry_swallow_from_years: i32 = 16, whole(16, 20, Unit::Years),
        "dry.from-years",
        "Its studies are in adults; the healthy group of the largest starts at 20 years. \"16 or over\" is old enough.",
        "dry.adults";
    dry_none_stops: bool = false, Kind::OnOff,
        "dry.none-stops",
        "Below 3 is the published reason to look further, none at all too. On: none at all is a stop.",
        "dry.none";

    voice_refers: bool = true, Kind::OnOff,
        "water.voice-refers",
        "Sources differ: the first rule has the voice sign, a later version drops it. Off: it is noted.",
        "water.voice";
    water_from_years: i32 = 2, whole(2, 18, Unit::Years),
        "water.from-years",
        "The study in children starts at 2 years. \"16 or over\" is old enough.",
        "water.from-two";
    throat_clear_refers: bool = false, Kind::OnOff,
        "water.throat-clear-refers",
        "No published rule that was read fails on it; it is told apart. On: it refers.",
        "water.throat-clear";

    sip_first: i32 = 3, whole(1, 5, Unit::Millilitres),
        "sips.first",
        "Small before large is a design choice; accuracy is published for 1 to 5 mL together.",
        "sips.clear";
    sip_second: i32 = 5, whole(3, 10, Unit::Millilitres),
        "sips.second",
        "5, 10 and 20 mL are published steps; which to take is local.",
        "sips.clear";
    sip_third: i32 = 10, whole(5, 20, Unit::Millilitres),
        "sips.third",
        "5, 10 and 20 mL are published steps; which to take is local.",
        "sips.clear";
    sip_repeats: i32 = 2, whole(1, 3, Unit::Times),
        "sips.repeats",
        "Twice each in the published steps.",
        "sips.clear";

    small_water_wording: Wording = Wording::A,
        Kind::OneOf(&["A", "B"]),
        "small-water.wording",
        "Two wordings are in use and differ in the results 2 and 3; the signs are kept either way.",
        "three-ml.residue";

    gag_counts: bool = false, Kind::OnOff,
        "six-signs.gag-counts",
        "The published rule has it; it is optional here and never tested before a swallow trial.",
        "six-signs.gag";

    upright_minutes: i32 = 0, whole(0, 60, Unit::Minutes),
        "handover.upright-minutes",
        "Staying upright is common advice; how long was not found published.",
        "handover";
}

impl Policy {
    /// The name of the policy that Penlight ships. No other policy may have it.
    pub const OURS: &'static str = "Penlight default 1";

    /// Most characters the name of a policy has: it stands in every handover.
    pub const MOST_NAME: usize = 60;

    /// How long an answer about a state of the moment stands.
    pub fn moment_stands(&self) -> Millis {
        Millis::from_secs(i64::from(self.ready_minutes) * 60)
    }
}

/// The setting with a key.
pub fn find(key: &str) -> Option<&'static Setting> {
    SETTINGS.iter().find(|setting| setting.key == key)
}

/// The settings in which two policies differ, in the order of the table.
pub fn differing<'a>(
    one: &'a Policy,
    other: &'a Policy,
) -> impl Iterator<Item = &'static Setting> + 'a {
    SETTINGS
        .iter()
        .filter(|setting| (setting.get)(one) != (setting.get)(other))
}
