//! Pieces on the screen: put there, brought up to date, taken away.
//!
//! A part that is drawn anew keeps the elements it has where the new piece has the same ones in the
//! same places, so that focus, what is typed and what is unfolded stay.

use std::borrow::Cow;
use std::cell::RefCell;
use std::rc::Rc;

use leptos::ev::Event;
use leptos::prelude::*;
use leptos::reactive::effect::RenderEffect;
use leptos::reactive::owner::Owner;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, UnwrapThrowExt};
use web_sys::{Comment, Element, HtmlElement, HtmlInputElement, Node, Text};

use super::piece::{Draw, El, Handler, Kind, Parts, Piece, Said, Trait};

/// A piece on the screen.
enum Shown {
    Nothing,
    Words(Text, Cow<'static, str>),
    El(Box<ShownEl>),
    Many(Vec<Shown>),
    Live(Live),
}

/// An element on the screen.
struct ShownEl {
    node: Element,
    tag: &'static str,
    traits: Vec<ShownTrait>,
    // Dropped before its element is.
    listeners: Vec<Listener>,
    inside: Vec<Shown>,
}

/// Something set on an element on the screen.
struct ShownTrait {
    kind: Kind,
    name: &'static str,
    value: ShownValue,
}

/// What it was set to.
enum ShownValue {
    Fixed(Cow<'static, str>),
    /// Set by an effect, which ends with it.
    Follows(#[expect(dead_code)] RenderEffect<()>),
}

/// A live part: what it shows now, the mark of its end, and the effect that draws it, which ends
/// with it.
struct Live {
    now: Rc<RefCell<Shown>>,
    end: Comment,
    _effect: RenderEffect<()>,
}

impl Drop for Live {
    fn drop(&mut self) {
        // The effect's task ends a moment later and holds it till then. What is in it must end now:
        // an effect in it that is due would read signals that are gone.
        if let Ok(mut now) = self.now.try_borrow_mut() {
            *now = Shown::Nothing;
        }
    }
}

/// Calls a handler with an event of an element for as long as it lives.
struct Listener {
    node: Element,
    event: &'static str,
    call: Closure<dyn FnMut(Event)>,
}

impl Drop for Listener {
    fn drop(&mut self) {
        // An event may still be on its way to an element that was taken away.
        let call = self.call.as_ref().unchecked_ref();
        let _ = self
            .node
            .remove_event_listener_with_callback(self.event, call);
    }
}

/// Shows a piece at the end of an element, for as long as the current owner lives.
pub fn show(inside: &Node, piece: Piece) {
    StoredValue::new_local(put(inside, piece, None));
}

fn insert(parent: &Node, node: &Node, before: Option<&Node>) {
    // It fails only where `before` is not in `parent`: then the page is broken anyway.
    let _ = parent.insert_before(node, before);
}

/// Puts a piece into a parent, before one of its nodes or at its end.
fn put(parent: &Node, piece: Piece, before: Option<&Node>) -> Shown {
    match piece {
        Piece::Nothing => Shown::Nothing,
        Piece::Words(words) => {
            let text = document().create_text_node(&words);
            insert(parent, &text, before);
            Shown::Words(text, words)
        }
        Piece::El(El(parts)) => {
            let shown = put_element(*parts);
            insert(parent, &shown.node, before);
            Shown::El(Box::new(shown))
        }
        Piece::Many(pieces) => {
            Shown::Many(pieces.into_iter().map(|p| put(parent, p, before)).collect())
        }
        Piece::Live(draw) => {
            let end = document().create_comment("");
            insert(parent, &end, before);
            Shown::Live(put_live(draw, end))
        }
    }
}

fn put_live(draw: Box<dyn Draw>, end: Comment) -> Live {
    let now = Rc::new(RefCell::new(Shown::Nothing));
    let (mark, slot) = (end.clone(), Rc::clone(&now));
    let effect = RenderEffect::new(move |_| {
        let piece = draw.draw();
        if let Some(parent) = mark.parent_node() {
            renew(&parent, &mut slot.borrow_mut(), piece, Some(&mark));
        }
    });
    Live {
        now,
        end,
        _effect: effect,
    }
}

/// Panics where the tag, a constant of a page, is no name.
fn create(tag: &str) -> Element {
    match tag {
        "svg" | "path" => document().create_element_ns(Some("http://www.w3.org/2000/svg"), tag),
        _ => document().create_element(tag),
    }
    .unwrap_throw()
}

fn put_element(parts: Parts) -> ShownEl {
    let node = create(parts.tag);
    let inside = parts
        .inside
        .into_iter()
        .map(|piece| put(&node, piece, None))
        .collect();
    let mut shown = ShownEl {
        node,
        tag: parts.tag,
        traits: Vec::new(),
        listeners: Vec::new(),
        inside,
    };
    shown.set_traits(parts.traits);
    shown.listen(parts.handlers);
    shown
}

impl ShownEl {
    fn set_traits(&mut self, traits: Vec<Trait>) {
        self.traits = traits
            .into_iter()
            .map(|Trait { kind, name, value }| ShownTrait {
                kind,
                name,
                value: set(&self.node, kind, name, value),
            })
            .collect();
    }

    fn listen(&mut self, handlers: Vec<(&'static str, Handler)>) {
        self.listeners = handlers
            .into_iter()
            .map(|(event, handler)| Listener::new(&self.node, event, handler))
            .collect();
    }

    /// Brings it up to date with parts of the same element.
    fn renew(&mut self, parts: Parts) {
        self.listen(parts.handlers);
        let same = self.traits.len() == parts.traits.len()
            && self
                .traits
                .iter()
                .zip(&parts.traits)
                .all(|(old, new)| old.kind == new.kind && old.name == new.name);
        if same {
            for (old, new) in self.traits.iter_mut().zip(parts.traits) {
                match (&old.value, &new.value) {
                    (ShownValue::Fixed(old), Said::Fixed(new)) if old == new => {}
                    _ => old.value = set(&self.node, old.kind, old.name, new.value),
                }
            }
        } else {
            for old in std::mem::take(&mut self.traits) {
                unset(&self.node, old.kind, old.name);
            }
            self.set_traits(parts.traits);
        }
        renew_all(&self.node, &mut self.inside, parts.inside, None);
    }
}

impl Listener {
    fn new(node: &Element, event: &'static str, mut handler: Handler) -> Listener {
        let owner = Owner::current().unwrap_or_default();
        let call: Box<dyn FnMut(Event)> = Box::new(move |e| owner.with(|| handler.handle(e)));
        let call = Closure::wrap(call);
        let _ = node.add_event_listener_with_callback(event, call.as_ref().unchecked_ref());
        Listener {
            node: node.clone(),
            event,
            call,
        }
    }
}

fn set(node: &Element, kind: Kind, name: &'static str, value: Said) -> ShownValue {
    match value {
        Said::Fixed(words) => {
            set_now(node, kind, name, &words);
            ShownValue::Fixed(words)
        }
        Said::Follows(words) => {
            let node = node.clone();
            let mut last = None;
            ShownValue::Follows(RenderEffect::new(move |_| {
                let words = Some(words.say());
                if words != last {
                    set_now(&node, kind, name, words.as_deref().unwrap_or_default());
                    last = words;
                }
            }))
        }
    }
}

fn set_now(node: &Element, kind: Kind, name: &str, words: &str) {
    // A refusal can only come from a name that no browser knows: nothing is set then.
    let _ = match kind {
        Kind::Attribute => node.set_attribute(name, words),
        Kind::Class if words.is_empty() => node.class_list().remove_1(name),
        Kind::Class => node.class_list().add_1(name),
        Kind::Style => node
            .unchecked_ref::<HtmlElement>()
            .style()
            .set_property(name, words),
        Kind::Held => {
            node.unchecked_ref::<HtmlInputElement>().set_value(words);
            Ok(())
        }
        Kind::Html => {
            node.set_inner_html(words);
            Ok(())
        }
    };
}

fn unset(node: &Element, kind: Kind, name: &str) {
    match kind {
        Kind::Attribute => {
            let _ = node.remove_attribute(name);
        }
        _ => set_now(node, kind, name, ""),
    }
}

/// Brings what is shown up to date. Gives its first node, or `before` where it has none.
fn renew(parent: &Node, shown: &mut Shown, piece: Piece, before: Option<&Node>) -> Option<Node> {
    match (&mut *shown, piece) {
        (Shown::Words(text, old), Piece::Words(new)) => {
            if *old != new {
                text.set_data(&new);
                *old = new;
            }
        }
        (Shown::El(old), Piece::El(El(new))) if old.tag == new.tag => old.renew(*new),
        (Shown::Many(old), Piece::Many(new)) => return renew_all(parent, old, new, before),
        (_, piece) => {
            let at = first(shown);
            let new = put(parent, piece, at.as_ref().or(before));
            take_away(shown);
            *shown = new;
        }
    }
    first(shown).or_else(|| before.cloned())
}

/// Brings several up to date, from the last to the first: each goes before the one after it.
fn renew_all(
    parent: &Node,
    shown: &mut Vec<Shown>,
    mut pieces: Vec<Piece>,
    before: Option<&Node>,
) -> Option<Node> {
    for left_over in shown.drain(pieces.len().min(shown.len())..) {
        take_away(&left_over);
    }
    let more = pieces.split_off(shown.len());
    let more: Vec<Shown> = more.into_iter().map(|p| put(parent, p, before)).collect();
    let mut next = more.iter().find_map(first).or_else(|| before.cloned());
    for (shown, piece) in shown.iter_mut().zip(pieces).rev() {
        next = renew(parent, shown, piece, next.as_ref());
    }
    shown.extend(more);
    next
}

fn first(shown: &Shown) -> Option<Node> {
    match shown {
        Shown::Nothing => None,
        Shown::Words(text, _) => Some(text.clone().into()),
        Shown::El(el) => Some(el.node.clone().into()),
        Shown::Many(many) => many.iter().find_map(first),
        Shown::Live(live) => first(&live.now.borrow()).or_else(|| Some(live.end.clone().into())),
    }
}

fn take_away(shown: &Shown) {
    match shown {
        Shown::Nothing => {}
        Shown::Words(text, _) => text.remove(),
        Shown::El(el) => el.node.remove(),
        Shown::Many(many) => many.iter().for_each(take_away),
        Shown::Live(live) => {
            take_away(&live.now.borrow());
            live.end.remove();
        }
    }
}
