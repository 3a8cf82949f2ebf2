//! How a domain type is made: a quantity, looked at once, then trusted.

/// Declares a newtype whose value is checked when it is made. Inside it is base units; whatever is
/// calculated from checked values is finite (see [`crate::error::SMALLEST`]).
macro_rules! checked {
    (@positive) => { $crate::error::Range::Positive };
    (@not_negative) => { $crate::error::Range::NotNegative };
    (@share) => { $crate::error::Range::Share };
    ($(#[$doc:meta])* $name:ident($quantity:ident), $check:ident, $argument:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        #[repr(transparent)]
        pub struct $name(pub(crate) f64);

        impl $crate::error::OneNumber for $name {
            const ARGUMENT: $crate::Argument = $crate::Argument::$argument;
            const RANGE: $crate::error::Range = checked!(@$check);
        }

        impl $name {
            /// Looks at the value, once.
            ///
            /// # Errors
            /// When it is not finite, has the wrong sign, or lies beyond 1e-30…1e30 base units.
            #[cfg_attr(target_feature = "simd128", inline(always))]
            pub fn new(value: $quantity) -> Result<Self, $crate::Error> {
                $crate::error::$check($crate::Argument::$argument, value.value).map(Self)
            }

            /// The plain quantity.
            #[must_use]
            pub const fn get(self) -> $quantity {
                $crate::quantity::base!($quantity, self.0)
            }
        }
    };
}
