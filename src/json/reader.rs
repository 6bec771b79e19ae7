//! Reading.

use std::borrow::Cow;
use std::fmt;

use serde::Deserialize;
use serde::de::value::CowStrDeserializer;
use serde::de::{
    Deserializer, EnumAccess, Error, IntoDeserializer, MapAccess, SeqAccess, VariantAccess, Visitor,
};

/// Values within values, at most: more would take more stack than a phone gives.
const DEEPEST: u8 = 120;

/// Why a text was not read, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// Line, from 1.
    pub line: usize,
    /// Character in the line, from 1; behind its last where the text ends too early.
    pub column: usize,
    /// Whether the text ends too early.
    pub cut: bool,
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, character {}", self.line, self.column)
    }
}

/// Reads a value, which must be all of the text.
///
/// # Errors
/// [`Wrong`] where the text is not JSON, or not of this type.
pub fn read<'de, T: Deserialize<'de>>(text: &'de str) -> Result<T, Wrong> {
    let mut reader = Reader {
        text,
        at: 0,
        depth: 0,
    };
    T::deserialize(&mut reader)
        .and_then(|value| reader.end().map(|()| value))
        .map_err(|No| reader.wrong())
}

/// Not read. Where is known to the reader; why is of no use.
#[derive(Debug)]
struct No;

impl fmt::Display for No {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not read")
    }
}

impl std::error::Error for No {}

impl Error for No {
    fn custom<T: fmt::Display>(_: T) -> No {
        No
    }
}

type Read<T> = Result<T, No>;

struct Reader<'de> {
    text: &'de str,
    at: usize,
    depth: u8,
}

/// A number as it stands there.
enum Number {
    Less(i64),
    Whole(u64),
    Fraction,
}

impl<'de> Reader<'de> {
    #[inline(never)]
    fn wrong(&self) -> Wrong {
        let before = self.text.get(..self.at).unwrap_or(self.text);
        let line_start = before.rfind('\n').map_or(0, |i| i + 1);
        Wrong {
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            cut: before.len() == self.text.len(),
        }
    }

    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next byte that is no white space, not yet taken.
    #[inline(never)]
    fn peek(&mut self) -> Option<u8> {
        while matches!(self.byte(), Some(b' ' | b'\n' | b'\t' | b'\r')) {
            self.at += 1;
        }
        self.byte()
    }

    #[inline(never)]
    fn take(&mut self, wanted: u8) -> bool {
        let there = self.peek() == Some(wanted);
        self.at += usize::from(there);
        there
    }

    fn need(&mut self, wanted: u8) -> Read<()> {
        if self.take(wanted) { Ok(()) } else { Err(No) }
    }

    fn end(&mut self) -> Read<()> {
        if self.peek().is_none() {
            Ok(())
        } else {
            Err(No)
        }
    }

    #[inline(never)]
    fn word(&mut self, word: &str) -> Read<()> {
        for wanted in word.bytes() {
            if self.byte() != Some(wanted) {
                return Err(No);
            }
            self.at += 1;
        }
        Ok(())
    }

    fn digits(&mut self) -> Read<()> {
        if !matches!(self.byte(), Some(b'0'..=b'9')) {
            return Err(No);
        }
        while matches!(self.byte(), Some(b'0'..=b'9')) {
            self.at += 1;
        }
        Ok(())
    }

    #[inline(never)]
    fn number(&mut self) -> Read<Number> {
        self.peek();
        let start = self.at;
        let less = self.byte() == Some(b'-');
        self.at += usize::from(less);
        if self.byte() == Some(b'0') {
            self.at += 1;
        } else {
            self.digits()?;
        }
        let whole = self.at;
        if self.byte() == Some(b'.') {
            self.at += 1;
            self.digits()?;
        }
        if matches!(self.byte(), Some(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.byte(), Some(b'+' | b'-')) {
                self.at += 1;
            }
            self.digits()?;
        }
        let digits = &self.text[start..whole];
        Ok(if self.at > whole {
            Number::Fraction
        } else if less {
            // What is less than nothing by nothing is no whole number.
            let n = digits.parse().ok().filter(|n| *n != 0);
            n.map_or(Number::Fraction, Number::Less)
        } else {
            digits.parse().map_or(Number::Fraction, Number::Whole)
        })
    }

    #[inline(never)]
    fn string(&mut self) -> Read<Cow<'de, str>> {
        self.need(b'"')?;
        let mut start = self.at;
        let mut text = String::new();
        loop {
            match self.byte().ok_or(No)? {
                b'"' => {
                    let rest = &self.text[start..self.at];
                    self.at += 1;
                    return Ok(if text.is_empty() {
                        Cow::Borrowed(rest)
                    } else {
                        text.push_str(rest);
                        Cow::Owned(text)
                    });
                }
                b'\\' => {
                    text.push_str(&self.text[start..self.at]);
                    self.at += 1;
                    text.push(self.escaped()?);
                    start = self.at;
                }
                0..0x20 => return Err(No),
                _ => self.at += 1,
            }
        }
    }

    /// The name of a field or of a variant: a text, whatever its type would take.
    fn name(&mut self) -> Read<CowStrDeserializer<'de, No>> {
        self.string().map(IntoDeserializer::into_deserializer)
    }

    fn escaped(&mut self) -> Read<char> {
        let c = self.byte().ok_or(No)?;
        self.at += 1;
        Ok(match c {
            b'"' | b'\\' | b'/' => char::from(c),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => {
                let first = self.four()?;
                // Two halves make one character beyond the first 65,536.
                let code = if (0xD800..0xDC00).contains(&first) {
                    self.word("\\u")?;
                    let second = self.four()?;
                    let low = second.checked_sub(0xDC00).filter(|low| *low < 0x400);
                    0x10000 + ((first - 0xD800) << 10) + low.ok_or(No)?
                } else {
                    first
                };
                return char::from_u32(code).ok_or(No);
            }
            _ => {
                self.at -= 1;
                return Err(No);
            }
        })
    }

    fn four(&mut self) -> Read<u32> {
        let mut code = 0;
        for _ in 0..4 {
            let digit = char::from(self.byte().ok_or(No)?).to_digit(16).ok_or(No)?;
            code = code * 16 + digit;
            self.at += 1;
        }
        Ok(code)
    }

    /// Goes into an object or a list.
    #[inline(never)]
    fn enter(&mut self, open: u8) -> Read<()> {
        self.need(open)?;
        self.depth += 1;
        if self.depth > DEEPEST {
            Err(No)
        } else {
            Ok(())
        }
    }

    #[inline(never)]
    fn leave(&mut self, close: u8) -> Read<()> {
        self.depth -= 1;
        self.need(close)
    }

    /// Whether another entry follows, past its comma.
    #[inline(never)]
    fn more(&mut self, first: &mut bool, close: u8) -> Read<bool> {
        if self.peek() == Some(close) {
            return Ok(false);
        }
        if !std::mem::take(first) {
            self.need(b',')?;
        }
        Ok(true)
    }

    /// Goes past a value.
    #[inline(never)]
    fn skip(&mut self) -> Read<()> {
        match self.peek().ok_or(No)? {
            b'"' => self.string().map(|_| ()),
            b'n' => self.word("null"),
            b't' => self.word("true"),
            b'f' => self.word("false"),
            open @ (b'{' | b'[') => {
                // In ASCII both kinds of bracket close two after they open.
                let close = open + 2;
                self.enter(open)?;
                let mut first = true;
                while self.more(&mut first, close)? {
                    if open == b'{' {
                        self.string()?;
                        self.need(b':')?;
                    }
                    self.skip()?;
                }
                self.leave(close)
            }
            _ => self.number().map(|_| ()),
        }
    }
}

impl<'de> Deserializer<'de> for &mut Reader<'de> {
    type Error = No;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        match self.peek().ok_or(No)? {
            b'"' => self.deserialize_str(visitor),
            b'{' => self.deserialize_map(visitor),
            b'[' => self.deserialize_seq(visitor),
            b'n' => self.deserialize_unit(visitor),
            b't' | b'f' => self.deserialize_bool(visitor),
            _ => self.deserialize_i64(visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        let on = self.peek() == Some(b't');
        self.word(if on { "true" } else { "false" })?;
        visitor.visit_bool(on)
    }

    fn deserialize_i64<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        match self.number()? {
            Number::Less(n) => visitor.visit_i64(n),
            Number::Whole(n) => visitor.visit_u64(n),
            // Told apart, not worked out: the code for it would be sent to every phone.
            Number::Fraction => visitor.visit_f64(f64::NAN),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.peek();
        let start = self.at;
        self.number()?;
        let n: f64 = self.text[start..self.at].parse().map_err(|_| No)?;
        if n.is_finite() {
            visitor.visit_f64(n)
        } else {
            Err(No)
        }
    }

    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.deserialize_f64(visitor)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        match self.string()? {
            Cow::Borrowed(text) => visitor.visit_borrowed_str(text),
            Cow::Owned(text) => visitor.visit_string(text),
        }
    }

    fn deserialize_unit<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.peek();
        self.word("null")?;
        visitor.visit_unit()
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        if self.peek() == Some(b'n') {
            self.word("null")?;
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Read<V::Value> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.enter(b'[')?;
        let value = visitor.visit_seq(Entries {
            reader: self,
            first: true,
        })?;
        self.leave(b']')?;
        Ok(value)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.enter(b'{')?;
        let value = visitor.visit_map(Entries {
            reader: self,
            first: true,
        })?;
        self.leave(b'}')?;
        Ok(value)
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, visitor: V) -> Read<V::Value> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Read<V::Value> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Read<V::Value> {
        // A plain variant is its name, any other an object of one entry.
        if self.peek() != Some(b'{') {
            return visitor.visit_enum(Plain(self));
        }
        self.enter(b'{')?;
        let value = visitor.visit_enum(Full(self))?;
        self.leave(b'}')?;
        Ok(value)
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.skip()?;
        visitor.visit_unit()
    }

    serde::forward_to_deserialize_any! {
        i8 i16 i32 i128 u8 u16 u32 u64 u128 char string bytes byte_buf unit_struct
        tuple_struct identifier
    }
}

/// What stands in an object or a list.
struct Entries<'a, 'de> {
    reader: &'a mut Reader<'de>,
    first: bool,
}

impl<'de> SeqAccess<'de> for Entries<'_, 'de> {
    type Error = No;

    fn next_element_seed<T: serde::de::DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Read<Option<T::Value>> {
        if self.reader.more(&mut self.first, b']')? {
            seed.deserialize(&mut *self.reader).map(Some)
        } else {
            Ok(None)
        }
    }
}

impl<'de> MapAccess<'de> for Entries<'_, 'de> {
    type Error = No;

    fn next_key_seed<K: serde::de::DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Read<Option<K::Value>> {
        if !self.reader.more(&mut self.first, b'}')? {
            return Ok(None);
        }
        seed.deserialize(self.reader.name()?).map(Some)
    }

    fn next_value_seed<V: serde::de::DeserializeSeed<'de>>(&mut self, seed: V) -> Read<V::Value> {
        self.reader.need(b':')?;
        seed.deserialize(&mut *self.reader)
    }
}

/// A variant that is its name.
struct Plain<'a, 'de>(&'a mut Reader<'de>);

impl<'de> EnumAccess<'de> for Plain<'_, 'de> {
    type Error = No;
    type Variant = Nothing;

    fn variant_seed<V: serde::de::DeserializeSeed<'de>>(
        self,
        seed: V,
    ) -> Read<(V::Value, Nothing)> {
        Ok((seed.deserialize(self.0.name()?)?, Nothing))
    }
}

/// What a plain variant holds.
struct Nothing;

impl<'de> VariantAccess<'de> for Nothing {
    type Error = No;

    fn unit_variant(self) -> Read<()> {
        Ok(())
    }

    fn newtype_variant_seed<T: serde::de::DeserializeSeed<'de>>(self, _: T) -> Read<T::Value> {
        Err(No)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Read<V::Value> {
        Err(No)
    }

    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Read<V::Value> {
        Err(No)
    }
}

/// A variant with what it holds.
struct Full<'a, 'de>(&'a mut Reader<'de>);

impl<'a, 'de> EnumAccess<'de> for Full<'a, 'de> {
    type Error = No;
    type Variant = Full<'a, 'de>;

    fn variant_seed<V: serde::de::DeserializeSeed<'de>>(
        self,
        seed: V,
    ) -> Read<(V::Value, Full<'a, 'de>)> {
        let variant = seed.deserialize(self.0.name()?)?;
        self.0.need(b':')?;
        Ok((variant, self))
    }
}

impl<'de> VariantAccess<'de> for Full<'_, 'de> {
    type Error = No;

    fn unit_variant(self) -> Read<()> {
        <()>::deserialize(self.0)
    }

    fn newtype_variant_seed<T: serde::de::DeserializeSeed<'de>>(self, seed: T) -> Read<T::Value> {
        seed.deserialize(self.0)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Read<V::Value> {
        self.0.deserialize_seq(visitor)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Read<V::Value> {
        self.0.deserialize_map(visitor)
    }
}
