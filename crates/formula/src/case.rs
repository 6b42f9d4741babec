//! Outside cases.
