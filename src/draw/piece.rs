//! What a page is made of.

use std::borrow::Cow;
use std::marker::PhantomData;

use leptos::ev::{Event, MouseEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A part of a page, not yet shown.
pub enum Piece {
    /// Nothing, which takes no room.
    Nothing,
    /// Words.
    Words(Cow<'static, str>),
    /// An element and what is in it.
    El(El),
    /// Several, one after the other.
    Many(Vec<Piece>),
    /// A part that is drawn anew when a signal it reads changes.
    Live(Box<dyn Draw>),
}

/// Draws a piece, each time it is asked.
///
/// This trait and the two below it stand for closures: a boxed closure of the standard traits
/// brings two more entries, each with code of its own, for ways of calling that nobody uses.
pub trait Draw {
    /// Draws it.
    fn draw(&self) -> Piece;
}

impl<T: Into<Piece>, F: Fn() -> T> Draw for F {
    fn draw(&self) -> Piece {
        self().into()
    }
}

/// Finds words, each time it is asked.
pub trait Say {
    /// Finds them.
    fn say(&self) -> String;
}

impl<T: Into<String>, F: Fn() -> T> Say for F {
    fn say(&self) -> String {
        self().into()
    }
}

/// Takes an event.
pub(super) trait Handle {
    /// Takes it.
    fn handle(&mut self, event: Event);
}

/// What takes an event of one kind.
struct Takes<E, F>(F, PhantomData<fn(E)>);

impl<E: JsCast, F: FnMut(E)> Handle for Takes<E, F> {
    fn handle(&mut self, event: Event) {
        (self.0)(event.unchecked_into());
    }
}

/// An element.
pub struct El(pub(super) Box<Parts>);

/// What an element is made of.
pub(super) struct Parts {
    pub(super) tag: &'static str,
    pub(super) traits: Vec<Trait>,
    pub(super) handlers: Vec<(&'static str, Handler)>,
    pub(super) inside: Vec<Piece>,
}

/// What is called with an event.
pub(super) type Handler = Box<dyn Handle>;

/// Something that is set on an element.
pub(super) struct Trait {
    pub(super) kind: Kind,
    pub(super) name: &'static str,
    pub(super) value: Said,
}

/// How it is set.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Kind {
    /// As an attribute.
    Attribute,
    /// As one class among others, there while the words are not empty.
    Class,
    /// As a property of the style.
    Style,
    /// As what a field holds.
    Held,
    /// As everything in it.
    Html,
}

/// Words that stay as they are, or follow their signals.
pub enum Said {
    /// As they are.
    Fixed(Cow<'static, str>),
    /// As their signals have it.
    Follows(Box<dyn Say>),
}

/// Words that follow their signals.
pub fn said<S: Into<String>>(words: impl Fn() -> S + 'static) -> Said {
    Said::Follows(Box::new(words))
}

/// A part that is drawn anew when what it reads changes.
pub fn live<T: Into<Piece>>(draw: impl Fn() -> T + 'static) -> Piece {
    Piece::Live(Box::new(draw))
}

/// A part that is there while something holds, and is not drawn anew for as long as it does.
pub fn when<T: Into<Piece>>(
    holds: impl Fn() -> bool + Send + Sync + 'static,
    draw: impl Fn() -> T + 'static,
) -> Piece {
    let holds = followed(Box::new(holds));
    live(move || holds.get().then(&draw))
}

/// Whether something holds.
trait Holds: Send + Sync {
    fn holds(&self) -> bool;
}

impl<F: Fn() -> bool + Send + Sync> Holds for F {
    fn holds(&self) -> bool {
        self()
    }
}

fn followed(holds: Box<dyn Holds>) -> Memo<bool> {
    Memo::new(move |_| holds.holds())
}

/// An element, by its name and classes: "p", "button.big.primary".
pub fn el(what: &'static str) -> El {
    let (tag, classes) = what.split_once('.').unwrap_or((what, ""));
    let mut el = El(Box::new(Parts {
        tag,
        traits: Vec::new(),
        handlers: Vec::new(),
        inside: Vec::new(),
    }));
    if tag == "button" {
        // A form's button by default; there are no forms.
        el.set(Kind::Attribute, "type", Said::Fixed("button".into()));
    }
    if !classes.is_empty() {
        el.set(Kind::Attribute, "class", classes.replace('.', " ").into());
    }
    el
}

impl El {
    fn set(&mut self, kind: Kind, name: &'static str, value: Said) {
        self.0.traits.push(Trait { kind, name, value });
    }

    fn handle(&mut self, event: &'static str, handler: Handler) {
        self.0.handlers.push((event, handler));
    }

    fn put(&mut self, piece: Piece) {
        self.0.inside.push(piece);
    }

    /// With an attribute.
    pub fn attr(mut self, name: &'static str, value: impl Into<Said>) -> El {
        self.set(Kind::Attribute, name, value.into());
        self
    }

    /// With classes, all of them.
    pub fn class(self, classes: impl Into<Said>) -> El {
        self.attr("class", classes)
    }

    /// With one more class while something holds. Its other classes must be fixed: classes that follow
    /// a signal are set as a whole and would take this one away.
    pub fn class_if(mut self, class: &'static str, holds: impl Fn() -> bool + 'static) -> El {
        let words = said(move || if holds() { class } else { "" });
        self.set(Kind::Class, class, words);
        self
    }

    /// With a property of its style.
    pub fn style(mut self, name: &'static str, value: impl Into<Said>) -> El {
        self.set(Kind::Style, name, value.into());
        self
    }

    /// With what a field holds.
    pub fn held(mut self, value: impl Into<Said>) -> El {
        self.set(Kind::Held, "value", value.into());
        self
    }

    /// With nothing in it but this HTML, which must be our own: what people typed goes in as words.
    pub fn html(mut self, html: impl Into<Said>) -> El {
        self.set(Kind::Html, "", html.into());
        self
    }

    /// With a handler of a press.
    pub fn press(self, handler: impl FnMut(MouseEvent) + 'static) -> El {
        self.on("click", handler)
    }

    /// With a handler of an event. Its kind must be that of the event.
    pub fn on<E: JsCast + 'static>(
        mut self,
        event: &'static str,
        handler: impl FnMut(E) + 'static,
    ) -> El {
        self.handle(event, Box::new(Takes(handler, PhantomData)));
        self
    }

    /// With one more piece in it.
    pub fn with(mut self, piece: impl Into<Piece>) -> El {
        self.put(piece.into());
        self
    }
}

/// Makes one piece of several.
macro_rules! all {
    ($($piece:expr),* $(,)?) => {
        $crate::draw::Piece::Many(vec![$($crate::draw::Piece::from($piece)),*])
    };
}
pub(crate) use all;

/// Anything that is a piece, as one.
pub trait Drawn {
    /// As a piece.
    fn piece(self) -> Piece;
}

impl<T: Into<Piece>> Drawn for T {
    fn piece(self) -> Piece {
        self.into()
    }
}

impl From<()> for Piece {
    fn from((): ()) -> Piece {
        Piece::Nothing
    }
}

impl From<El> for Piece {
    fn from(el: El) -> Piece {
        Piece::El(el)
    }
}

impl From<&'static str> for Piece {
    fn from(words: &'static str) -> Piece {
        Piece::Words(words.into())
    }
}

impl From<String> for Piece {
    fn from(words: String) -> Piece {
        Piece::Words(words.into())
    }
}

impl From<u32> for Piece {
    fn from(count: u32) -> Piece {
        count.to_string().into()
    }
}

impl From<usize> for Piece {
    fn from(count: usize) -> Piece {
        count.to_string().into()
    }
}

impl From<Said> for Piece {
    fn from(said: Said) -> Piece {
        match said {
            Said::Fixed(words) => Piece::Words(words),
            Said::Follows(words) => Piece::Live(Box::new(move || words.say())),
        }
    }
}

impl<T: Into<Piece>> From<Option<T>> for Piece {
    fn from(piece: Option<T>) -> Piece {
        piece.map_or(Piece::Nothing, Into::into)
    }
}

impl<T: Into<Piece>> From<Vec<T>> for Piece {
    fn from(pieces: Vec<T>) -> Piece {
        pieces.into_iter().collect()
    }
}

impl<T: Into<Piece>, const N: usize> From<[T; N]> for Piece {
    fn from(pieces: [T; N]) -> Piece {
        pieces.into_iter().collect()
    }
}

impl<T: Into<Piece>> FromIterator<T> for Piece {
    fn from_iter<I: IntoIterator<Item = T>>(pieces: I) -> Piece {
        Piece::Many(pieces.into_iter().map(Into::into).collect())
    }
}

impl From<&'static str> for Said {
    fn from(words: &'static str) -> Said {
        Said::Fixed(words.into())
    }
}

impl From<String> for Said {
    fn from(words: String) -> Said {
        Said::Fixed(words.into())
    }
}
