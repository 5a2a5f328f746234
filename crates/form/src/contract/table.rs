//! How does a table of names become ids, each name written once?

/// A row of a table of names.
#[derive(Debug)]
pub struct Row<Facts: 'static> {
    /// Its number, which never changes and is never given to another.
    pub number: u16,
    /// The name.
    pub name: &'static str,
    /// What else the table says of it.
    pub facts: Facts,
    /// What it means, in a line; for whoever reads the reference, so not in a page's wasm.
    #[cfg(not(target_family = "wasm"))]
    pub meaning: &'static str,
}

/// The places of names in the order of the alphabet. Two names that are the same do not compile.
pub const fn by_name<const N: usize>(names: [&str; N]) -> [u8; N] {
    assert!(N <= 256);
    let mut places = [0; N];
    let mut sorted = 0;
    while sorted < N {
        let mut at = sorted;
        while at > 0 && is_before(names[sorted], names[places[at - 1] as usize]) {
            places[at] = places[at - 1];
            at -= 1;
        }
        assert!(at == 0 || is_before(names[places[at - 1] as usize], names[sorted]), "a name twice");
        places[at] = sorted as u8;
        sorted += 1;
    }
    places
}

/// What [`Ord`] says of texts, where it can't be asked.
const fn is_before(a: &str, b: &str) -> bool {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    let mut at = 0;
    while at < a.len() && at < b.len() {
        if a[at] != b[at] {
            return a[at] < b[at];
        }
        at += 1;
    }
    a.len() < b.len()
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

            const ROWS: [Row<$Facts>; Self::ALL.len()] = [$(
                Row {
                    number: $number,
                    name: $name,
                    facts: ($($facts)?),
                    #[cfg(not(target_family = "wasm"))]
                    meaning: $meaning,
                }
            ),*];

            const BY_NAME: [u8; Self::ALL.len()] = by_name([$($name),*]);

            /// Its row of the table.
            #[must_use]
            pub fn row(self) -> &'static Row<$Facts> {
                static ROWS: &[Row<$Facts>] = &$Id::ROWS;
                &ROWS[self as usize]
            }

            /// Its name in the contract.
            #[must_use]
            pub fn name(self) -> &'static str {
                self.row().name
            }

            /// The number of its row.
            #[must_use]
            pub fn number(self) -> u16 {
                self.row().number
            }

            /// The one of this number.
            #[must_use]
            pub fn numbered(of: u16) -> Option<Self> {
                Self::ALL.into_iter().find(|id| id.number() == of)
            }

            /// The one of this name.
            #[must_use]
            pub fn find(name: &str) -> Option<Self> {
                static BY_NAME: &[u8] = &$Id::BY_NAME;
                let at = BY_NAME.binary_search_by(|at| Self::ALL[usize::from(*at)].name().cmp(name));
                Some(Self::ALL[usize::from(BY_NAME[at.ok()?])])
            }
        }
    };
}
pub(crate) use names;
