//! Writing.

use std::fmt;

use serde::Serialize;
use serde::ser::{
    Error, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
    SerializeTupleStruct, SerializeTupleVariant, Serializer,
};

/// A value that JSON has no form for: a name that is no text, or what its type refuses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unwritable;

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("it has no form as JSON")
    }
}

impl std::error::Error for Unwritable {}

impl Error for Unwritable {
    fn custom<T: fmt::Display>(_: T) -> Unwritable {
        Unwritable
    }
}

/// Writes a value as JSON without white space.
///
/// # Errors
/// [`Unwritable`].
pub fn write<T: Serialize + ?Sized>(value: &T) -> Result<String, Unwritable> {
    let mut text = String::new();
    value.serialize(Writer(&mut text)).map(|()| text)
}

type Written = Result<(), Unwritable>;

struct Writer<'a>(&'a mut String);

/// A list or an object that is being written.
struct Open<'a> {
    text: &'a mut String,
    first: bool,
    /// What closes it.
    close: &'static str,
}

impl Writer<'_> {
    #[inline(never)]
    fn put(&mut self, text: &str) -> Written {
        self.0.push_str(text);
        Ok(())
    }

    #[inline(never)]
    fn string(&mut self, text: &str) -> Written {
        self.0.push('"');
        for c in text.chars() {
            match c {
                '"' => self.0.push_str("\\\""),
                '\\' => self.0.push_str("\\\\"),
                '\n' => self.0.push_str("\\n"),
                '\r' => self.0.push_str("\\r"),
                '\t' => self.0.push_str("\\t"),
                '\u{8}' => self.0.push_str("\\b"),
                '\u{c}' => self.0.push_str("\\f"),
                '\0'..'\u{20}' => {
                    self.0.push_str("\\u00");
                    for half in [c as u32 >> 4, c as u32 & 15] {
                        self.0.extend(char::from_digit(half, 16));
                    }
                }
                _ => self.0.push(c),
            }
        }
        self.put("\"")
    }

    /// `{"Variant":`, closed by a brace after what it holds.
    #[inline(never)]
    fn variant(&mut self, name: &str) -> Written {
        self.put("{")?;
        self.string(name)?;
        self.put(":")
    }
}

impl<'a> Writer<'a> {
    #[inline(never)]
    fn open(self, open: &str, close: &'static str) -> Open<'a> {
        self.0.push_str(open);
        Open {
            text: self.0,
            first: true,
            close,
        }
    }
}

impl Open<'_> {
    #[inline(never)]
    fn comma(&mut self) {
        if !std::mem::take(&mut self.first) {
            self.text.push(',');
        }
    }

    fn entry<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
        self.comma();
        value.serialize(Writer(self.text))
    }

    fn field<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) -> Written {
        self.comma();
        Writer(self.text).string(name)?;
        self.text.push(':');
        value.serialize(Writer(self.text))
    }

    #[inline(never)]
    fn shut(self) -> Written {
        self.text.push_str(self.close);
        Ok(())
    }
}

impl<'a> Serializer for Writer<'a> {
    type Ok = ();
    type Error = Unwritable;
    type SerializeSeq = Open<'a>;
    type SerializeTuple = Open<'a>;
    type SerializeTupleStruct = Open<'a>;
    type SerializeTupleVariant = Open<'a>;
    type SerializeMap = Open<'a>;
    type SerializeStruct = Open<'a>;
    type SerializeStructVariant = Open<'a>;

    fn serialize_bool(mut self, on: bool) -> Written {
        self.put(if on { "true" } else { "false" })
    }

    fn serialize_i64(mut self, n: i64) -> Written {
        self.put(&n.to_string())
    }

    fn serialize_u64(mut self, n: u64) -> Written {
        self.put(&n.to_string())
    }

    fn serialize_i8(self, n: i8) -> Written {
        self.serialize_i64(n.into())
    }

    fn serialize_i16(self, n: i16) -> Written {
        self.serialize_i64(n.into())
    }

    fn serialize_i32(self, n: i32) -> Written {
        self.serialize_i64(n.into())
    }

    fn serialize_u8(self, n: u8) -> Written {
        self.serialize_u64(n.into())
    }

    fn serialize_u16(self, n: u16) -> Written {
        self.serialize_u64(n.into())
    }

    fn serialize_u32(self, n: u32) -> Written {
        self.serialize_u64(n.into())
    }

    fn serialize_f32(self, n: f32) -> Written {
        self.serialize_f64(n.into())
    }

    fn serialize_f64(mut self, n: f64) -> Written {
        if n.is_finite() {
            self.put(&format!("{n:?}"))
        } else {
            self.put("null")
        }
    }

    fn serialize_char(mut self, c: char) -> Written {
        self.string(c.encode_utf8(&mut [0; 4]))
    }

    fn serialize_str(mut self, text: &str) -> Written {
        self.string(text)
    }

    fn serialize_bytes(self, bytes: &[u8]) -> Written {
        bytes.serialize(self)
    }

    fn serialize_none(mut self) -> Written {
        self.put("null")
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Written {
        value.serialize(self)
    }

    fn serialize_unit(mut self) -> Written {
        self.put("null")
    }

    fn serialize_unit_struct(self, _: &'static str) -> Written {
        self.serialize_unit()
    }

    fn serialize_unit_variant(mut self, _: &'static str, _: u32, name: &'static str) -> Written {
        self.string(name)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Written {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        value: &T,
    ) -> Written {
        self.variant(name)?;
        value.serialize(Writer(self.0))?;
        self.put("}")
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Open<'a>, Unwritable> {
        Ok(self.open("[", "]"))
    }

    fn serialize_tuple(self, _: usize) -> Result<Open<'a>, Unwritable> {
        Ok(self.open("[", "]"))
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Open<'a>, Unwritable> {
        Ok(self.open("[", "]"))
    }

    fn serialize_tuple_variant(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Open<'a>, Unwritable> {
        self.variant(name)?;
        Ok(self.open("[", "]}"))
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Open<'a>, Unwritable> {
        Ok(self.open("{", "}"))
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Open<'a>, Unwritable> {
        Ok(self.open("{", "}"))
    }

    fn serialize_struct_variant(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Open<'a>, Unwritable> {
        self.variant(name)?;
        Ok(self.open("{", "}}"))
    }
}

/// Lists of each kind that serde tells apart; all are lists here.
macro_rules! lists {
    ($($kind:ident: $add:ident),*) => {
        $(impl $kind for Open<'_> {
            type Ok = ();
            type Error = Unwritable;

            fn $add<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
                self.entry(value)
            }

            fn end(self) -> Written {
                self.shut()
            }
        })*
    };
}

lists!(
    SerializeSeq: serialize_element,
    SerializeTuple: serialize_element,
    SerializeTupleStruct: serialize_field,
    SerializeTupleVariant: serialize_field
);

/// Objects with names that are known.
macro_rules! objects {
    ($($kind:ident),*) => {
        $(impl $kind for Open<'_> {
            type Ok = ();
            type Error = Unwritable;

            fn serialize_field<T: Serialize + ?Sized>(
                &mut self,
                name: &'static str,
                value: &T,
            ) -> Written {
                self.field(name, value)
            }

            fn end(self) -> Written {
                self.shut()
            }
        })*
    };
}

objects!(SerializeStruct, SerializeStructVariant);

impl SerializeMap for Open<'_> {
    type Ok = ();
    type Error = Unwritable;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, name: &T) -> Written {
        self.comma();
        let start = self.text.len();
        name.serialize(Writer(self.text))?;
        if self.text[start..].starts_with('"') {
            Ok(())
        } else {
            Err(Unwritable)
        }
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
        self.text.push(':');
        value.serialize(Writer(self.text))
    }

    fn end(self) -> Written {
        self.shut()
    }
}
