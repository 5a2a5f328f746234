//! How are lists and maps read from a file that serde has no words for? (Feature `serde`: arrays of more than 32, sets,
//! lists with room to spare, maps by codes.)

use core::fmt;
use core::marker::PhantomData;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

pub(crate) fn serialize<S: Serializer, T: Serialize, const N: usize>(
    all: &[T; N],
    to: S,
) -> Result<S::Ok, S::Error> {
    to.collect_seq(all)
}

pub(crate) fn deserialize<'de, D, T, const N: usize>(from: D) -> Result<[T; N], D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de> + Copy + Default,
{
    from.deserialize_seq(All(PhantomData))
}

struct All<T, const N: usize>(PhantomData<T>);

impl<'de, T: Deserialize<'de> + Copy + Default, const N: usize> Visitor<'de> for All<T, N> {
    type Value = [T; N];

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        write!(f, "a list of {N}")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<[T; N], A::Error> {
        let mut all = [T::default(); N];
        for (place, one) in all.iter_mut().enumerate() {
            *one = from.next_element()?.ok_or_else(|| A::Error::invalid_length(place, &self))?;
        }
        match from.next_element::<T>()? {
            None => Ok(all),
            Some(_) => Err(A::Error::invalid_length(N + 1, &self)),
        }
    }
}

/// What comes of adding each of a list, until one has no place.
pub(crate) fn list<'de, D, S, T>(from: D, start: S, add: fn(S, T) -> Option<S>) -> Result<S, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
{
    from.deserialize_seq(List { start, add })
}

struct List<S, T> {
    start: S,
    add: fn(S, T) -> Option<S>,
}

impl<'de, S, T: Deserialize<'de>> Visitor<'de> for List<S, T> {
    type Value = S;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a list")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<S, A::Error> {
        let mut all = self.start;
        while let Some(one) = from.next_element()? {
            all = (self.add)(all, one).ok_or_else(|| A::Error::custom("one too many, or one twice"))?;
        }
        Ok(all)
    }
}

/// What comes of adding each of a map, its keys known by their codes, until one is there already.
pub(crate) fn map<'de, D, S, K, T>(
    from: D,
    start: S,
    key: fn(&str) -> Option<K>,
    add: fn(S, K, T) -> Option<S>,
) -> Result<S, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
{
    from.deserialize_map(Map { start, key, add })
}

struct Map<S, K, T> {
    start: S,
    key: fn(&str) -> Option<K>,
    add: fn(S, K, T) -> Option<S>,
}

impl<'de, S, K, T: Deserialize<'de>> Visitor<'de> for Map<S, K, T> {
    type Value = S;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a map")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<S, A::Error> {
        let mut all = self.start;
        while let Some(key) = from.next_key_seed(Key(self.key))? {
            all = (self.add)(all, key, from.next_value()?).ok_or_else(|| A::Error::custom("one twice"))?;
        }
        Ok(all)
    }
}

struct Key<K>(fn(&str) -> Option<K>);

impl<'de, K> DeserializeSeed<'de> for Key<K> {
    type Value = K;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<K, D::Error> {
        from.deserialize_str(self)
    }
}

impl<K> Visitor<'_> for Key<K> {
    type Value = K;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a code that is known")
    }

    fn visit_str<E: Error>(self, code: &str) -> Result<K, E> {
        (self.0)(code).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Str(code), &self))
    }
}
