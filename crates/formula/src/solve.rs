//! Solving a calculation backwards.
