package org.demebook.wall;

import static java.lang.annotation.ElementType.METHOD;
import static java.lang.annotation.ElementType.TYPE;
import static java.lang.annotation.RetentionPolicy.RUNTIME;

import jakarta.interceptor.InterceptorBinding;
import java.lang.annotation.Retention;
import java.lang.annotation.Target;

/**
 * A reading that looks behind the wall, with the whole register there: {@link Wall#whole} around a method of a bean, in its
 * transaction. Whoever puts it on a method takes it on themselves that what the asker may not see does not come out of it.
 */
@InterceptorBinding
@Retention(RUNTIME)
@Target({METHOD, TYPE})
public @interface WholeRegister {}
