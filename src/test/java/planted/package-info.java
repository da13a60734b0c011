/** Classes that break the house rules on purpose, to prove that the rules find them. Nothing uses them. */
package planted;
