//! How does a table of names become ids, each name written once?

/// Names, one behind the other, and how long each is: half of what a list of texts takes.
pub struct Names {
    /// The names.
    pub text: &'static str,
    /// Their lengths.
    pub lengths: &'static [u8],
}

impl Names {
    /// The name at a place.
    #[inline(never)]
    pub fn at(&self, place: usize) -> &'static str {
        let (before, behind) = self.lengths.split_at_checked(place).unwrap_or_default();
        let begin = before.iter().map(|length| usize::from(*length)).sum();
        let end = begin + usize::from(*behind.first().unwrap_or(&0));
        self.text.get(begin..end).unwrap_or_default()
    }

    /// Where a name stands.
    #[inline(never)]
    pub fn place(&self, name: &str) -> Option<usize> {
        let mut begin = 0;
        self.lengths.iter().position(|length| {
            let end = begin + usize::from(*length);
            let found = end - begin == name.len() && self.text.get(begin..end) == Some(name);
            begin = end;
            found
        })
    }
}

/// Is no name there twice?
pub const fn are_distinct(names: &[&str]) -> bool {
    let mut at = 0;
    while at < names.len() {
        let mut before = 0;
        while before < at {
            if is_same(names[before], names[at]) {
                return false;
            }
            before += 1;
        }
        at += 1;
    }
    true
}

/// What [`Eq`] says of texts, where it can't be asked.
const fn is_same(a: &str, b: &str) -> bool {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    let mut at = 0;
    while a.len() == b.len() && at < a.len() && a[at] == b[at] {
        at += 1;
    }
    a.len() == b.len() && at == a.len()
}

/// A table of names: an id for each row, which is the one place that has its number, name, facts and meaning.
macro_rules! names {
    ($(#[$doc:meta])* $Id:ident: $Facts:ty {
        $($number:literal $id:ident $name:literal $(: $facts:expr)?, $meaning:literal;)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum $Id {
            $(#[doc = $meaning] $id),*
        }

        impl $Id {
            /// All of them, in the order of the table.
            pub const ALL: [Self; [$($number),*].len()] = [$(Self::$id),*];

            const FACTS: [$Facts; Self::ALL.len()] = [$(($($facts)?)),*];

            /// What else the table says of it.
            #[must_use]
            pub fn facts(self) -> &'static $Facts {
                static FACTS: &[$Facts] = &$Id::FACTS;
                &FACTS[self as usize]
            }

            /// What it means, in a line; for whoever reads the reference, so not in a page's wasm.
            #[cfg(not(target_family = "wasm"))]
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                [$($meaning),*][self as usize]
            }

            /// Its name in the contract.
            #[must_use]
            pub fn name(self) -> &'static str {
                Self::names().at(self as usize)
            }

            fn names() -> &'static Names {
                static NAMES: Names = Names { text: concat!($($name),*), lengths: &[$($name.len() as u8),*] };
                &NAMES
            }

            /// Its number, which never changes and is never given to another.
            #[must_use]
            pub const fn number(self) -> u16 {
                [$($number),*][self as usize]
            }

            /// The one of this number.
            #[must_use]
            pub fn numbered(of: u16) -> Option<Self> {
                Self::ALL.into_iter().find(|id| id.number() == of)
            }

            /// The one of this name.
            #[must_use]
            pub fn find(name: &str) -> Option<Self> {
                Some(Self::ALL[Self::names().place(name)?])
            }
        }

        const _: () = assert!(are_distinct(&[$($name),*]), "a name twice");
    };
}
pub(crate) use names;
