//! What does a list of more than 32 look like in a file? (Feature `serde`, which knows arrays up to there.)

use core::fmt;
use core::marker::PhantomData;
use serde::de::{Error, SeqAccess, Visitor};
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
