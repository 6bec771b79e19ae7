//! Tones, made on the spot.
//!
//! They are placed on the audio clock, which does not wait for the main thread. An iPhone whose
//! ring switch is off plays none of them, and there is no telling: nothing may be said by sound
//! alone.

use std::cell::RefCell;

use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{AudioContext, AudioContextState, GainNode};

use super::window;

/// One tone of a pattern.
struct Tone {
    /// When it begins, in seconds from the pattern's beginning.
    at: f64,
    /// Its pitch. Phone speakers give little below 500 Hz.
    hertz: f32,
    /// How long it sounds, in seconds.
    length: f64,
}

const fn tone(at: f64, hertz: f32, length: f64) -> Tone {
    Tone { at, hertz, length }
}

const GO: &[Tone] = &[tone(0.0, 1320.0, 0.4)];
const END: &[Tone] = &[tone(0.0, 880.0, 0.18), tone(0.22, 587.0, 0.35)];
const TICK: Tone = tone(0.0, 1000.0, 0.06);
const COUNTDOWN: &[Tone] = &[
    tone(0.0, 660.0, 0.12),
    tone(1.0, 660.0, 0.12),
    tone(2.0, 660.0, 0.12),
    tone(3.0, 1320.0, 0.4),
];

/// Loud enough for a ward, short of distortion.
const PEAK: f32 = 0.35;
/// A tone that begins or ends at once clicks; these ramps are too short to be heard as such.
const RISE: f64 = 0.008;
const FALL: f64 = 0.03;
/// So far ahead that the first ramp is not yet past when the audio thread reads it.
const LEAD: f64 = 0.01;
/// A tone this late is left out: a late "go" is worse than none.
const LATEST: f64 = 0.1;

#[derive(Clone)]
struct Audio {
    context: AudioContext,
    /// Everything that sounds goes through here, so that it can be hushed at once.
    out: GainNode,
}

thread_local! {
    static AUDIO: RefCell<Option<Audio>> = const { RefCell::new(None) };
}

/// Makes sound possible. Call it in the handler of a press, again at each start: the browser
/// lets audio begin nowhere else, and iOS stops it after a call or a lock of the screen.
pub fn unlock() {
    let audio = AUDIO.with_borrow_mut(|audio| {
        let closed = |a: &Audio| a.context.state() == AudioContextState::Closed;
        if audio.as_ref().is_none_or(closed) {
            *audio = AudioContext::new().ok().and_then(|context| {
                let out = new_out(&context)?;
                Some(Audio { context, out })
            });
        }
        audio.clone()
    });
    if let Some(audio) = audio
        && audio.context.state() != AudioContextState::Running
        && let Ok(promise) = audio.context.resume()
    {
        spawn_local(async move {
            let _ = JsFuture::from(promise).await;
        });
    }
}

/// Whether a tone would sound now, as far as the browser tells.
pub fn can_be_heard() -> bool {
    offset().is_some()
}

/// "Go".
pub fn go_tone() {
    play(GO);
}

/// The time is over.
pub fn end_tone() {
    play(END);
}

/// Three short tones now, after one and after two seconds, and "go" after three.
pub fn countdown() {
    play(COUNTDOWN);
}

/// Audio time less the page's time, in seconds; none while nothing can sound.
pub(super) fn offset() -> Option<f64> {
    let audio = AUDIO.with_borrow(Clone::clone)?;
    (audio.context.state() == AudioContextState::Running)
        .then(|| audio.context.current_time() - seconds())
}

/// A tick at a moment of the audio clock, in seconds.
pub(super) fn tick_at(at: f64) {
    if let Some(audio) = AUDIO.with_borrow(Clone::clone) {
        let _ = place_one(&audio, at.max(audio.context.current_time()), &TICK);
    }
}

/// Silences what sounds and what was still to come, as when a countdown is called off.
pub fn hush() {
    AUDIO.with_borrow_mut(|audio| {
        if let Some(audio) = audio
            && let Some(out) = new_out(&audio.context)
        {
            let old = std::mem::replace(&mut audio.out, out);
            let now = audio.context.current_time();
            let _ = old.gain().set_value_at_time(1.0, now);
            let _ = old.gain().linear_ramp_to_value_at_time(0.0, now + FALL);
        }
    });
}

fn new_out(context: &AudioContext) -> Option<GainNode> {
    let out = context.create_gain().ok()?;
    out.connect_with_audio_node(&context.destination()).ok()?;
    Some(out)
}

fn play(tones: &'static [Tone]) {
    let Some(audio) = AUDIO.with_borrow(Clone::clone) else {
        return;
    };
    if audio.context.state() == AudioContextState::Running {
        place(&audio, tones, 0.0);
        return;
    }
    // The audio clock stands still until the context runs: a pattern placed on it now would come
    // late by as long as that takes.
    let asked = seconds();
    let Ok(promise) = audio.context.resume() else {
        return;
    };
    spawn_local(async move {
        if JsFuture::from(promise).await.is_ok() {
            place(&audio, tones, seconds() - asked);
        }
    });
}

/// Puts a pattern that was due to begin `late` seconds ago on the audio clock.
fn place(audio: &Audio, tones: &[Tone], late: f64) {
    let now = audio.context.current_time() + LEAD;
    for tone in tones {
        let ahead = tone.at - late;
        if ahead >= -LATEST {
            // A tone that can't be made is silent, like all that fails here.
            let _ = place_one(audio, now + ahead.max(0.0), tone);
        }
    }
}

fn place_one(audio: &Audio, at: f64, tone: &Tone) -> Result<(), JsValue> {
    let source = audio.context.create_oscillator()?;
    let shape = audio.context.create_gain()?;
    source.frequency().set_value(tone.hertz);
    let gain = shape.gain();
    let end = at + tone.length;
    gain.set_value_at_time(0.0, at)?;
    gain.linear_ramp_to_value_at_time(PEAK, at + RISE)?;
    gain.set_value_at_time(PEAK, end - FALL)?;
    gain.linear_ramp_to_value_at_time(0.0, end)?;
    source.connect_with_audio_node(&shape)?;
    shape.connect_with_audio_node(&audio.out)?;
    source.start_with_when(at)?;
    source.stop_with_when(end)
}

fn seconds() -> f64 {
    window()
        .and_then(|window| window.performance())
        .map_or(0.0, |performance| performance.now() / 1000.0)
}
