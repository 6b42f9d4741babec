//! Closed lists of words: gate kinds, exposures, metals… Each word is a variant of an enumeration.

/// An enumeration whose variants are written as fixed words in site files, on the command line and on paper.
pub trait Word: Sized + Copy + PartialEq + 'static {
    /// Every word, in the order of declaration.
    const WORDS: &'static [&'static str];
    /// The word of this variant.
    fn word(self) -> &'static str;
    /// The variant of a word, if it is one of [`Word::WORDS`].
    fn from_word(word: &str) -> Option<Self>;
}

/// Declares an enumeration of words that is also an input of calculations.
///
/// ```
/// quantity::words! {
///     /// Metal of a conductor.
///     pub enum Metal {
///         /// Annealed copper.
///         Copper = "copper",
///         /// Aluminum.
///         Aluminum = "aluminum",
///     }
/// }
/// use quantity::Word as _;
/// assert_eq!(Metal::from_word("copper"), Some(Metal::Copper));
/// assert_eq!(Metal::Aluminum.word(), "aluminum");
/// ```
#[macro_export]
macro_rules! words {
    ($(#[doc = $doc:literal])* pub enum $name:ident { $($(#[doc = $variant_doc:literal])* $variant:ident = $word:literal,)* }) => {
        $(#[doc = $doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name { $($(#[doc = $variant_doc])* $variant,)* }

        impl $name {
            /// Every variant, in the order of declaration.
            pub const ALL: &'static [$name] = &[$($name::$variant,)*];
        }

        impl $crate::Word for $name {
            const WORDS: &'static [&'static str] = &[$($word,)*];
            fn word(self) -> &'static str { match self { $($name::$variant => $word,)* } }
            fn from_word(word: &str) -> Option<Self> {
                match word { $($word => Some($name::$variant),)* _ => None }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::Word::word(*self))
            }
        }

        impl $crate::Argument for $name {
            const SORT: $crate::Sort = $crate::Sort::Words(<$name as $crate::Word>::WORDS);
            fn to_value(&self) -> $crate::Value { $crate::Value::Word($crate::Word::word(*self)) }
            fn from_value(value: &$crate::Value) -> Option<Self> {
                match value {
                    $crate::Value::Word(word) => <$name as $crate::Word>::from_word(word),
                    _ => None,
                }
            }
        }
    };
}
