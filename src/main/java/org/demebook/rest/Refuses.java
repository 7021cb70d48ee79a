package org.demebook.rest;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.demebook.problem.ProblemType;

/** The problem types that an operation may answer with, beyond those that any operation may; they go into the contract. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Refuses {
    ProblemType[] value() default {};
}
