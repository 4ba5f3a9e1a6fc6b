// Stands in for the package server-only, which throws outside a server bundle.
export {};
